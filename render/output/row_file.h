// A file that grows by whole rows while work goes on, and that later work goes on with. A power cut or a kill
// in the middle of a row costs that row alone.

#pragma once

#include <filesystem>
#include <string>

namespace overbend::output {

class RowFile {
  public:
    // Opens it, or begins it with `head`, a line with its end. A last row without its end is cut off. One
    // process at a time: it is locked while this stands.
    // Throws std::runtime_error with the path: it cannot be written, another process has it, or it begins
    // with another line.
    RowFile(const std::filesystem::path& path, const std::string& head);
    ~RowFile();
    RowFile(const RowFile&) = delete;
    RowFile& operator=(const RowFile&) = delete;

    // row: with its line end, added in one piece. Throws as above.
    void add(const std::string& row);

  private:
    std::filesystem::path path_;
    int file_ = -1;
};

}  // namespace overbend::output
