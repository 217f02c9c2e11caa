// Holds the precompiled headers of the checks; CMakeLists.txt lists them.
