// Holds the precompiled headers of the program; CMakeLists.txt lists them.
