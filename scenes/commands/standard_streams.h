// Standard input, output and error, which may have been closed before we start, or be on a full disk.

#pragma once

namespace overbend::commands {

// Before any file is opened: one that was closed is put on /dev/null, so that no file of ours comes to stand
// in its place and takes what is printed. What is printed to a closed output is an error, as on a full disk.
void keep_standard_streams();

// Whether all that was printed has been taken.
bool output_was_taken();

}  // namespace overbend::commands
