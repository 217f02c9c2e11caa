// Folders are filled beside the place where they are to stand, and exchanged for what stands there: whatever
// goes wrong, the files of an earlier run stay.

#pragma once

#include <filesystem>
#include <functional>
#include <string>

namespace overbend::output {

// All of these throw std::runtime_error with the path and the reason.
class PartFolder {
  public:
    // The folder above must exist; what stands at the path is a folder, or nothing.
    explicit PartFolder(const std::filesystem::path& path);
    ~PartFolder();  // gone with all that is in it, unless it has its name
    PartFolder(const PartFolder&) = delete;
    PartFolder& operator=(const PartFolder&) = delete;

    // Where it stands until it has its name.
    const std::filesystem::path& place() const { return place_; }

    // In one step it stands at the path. Of the folder that stood there the entries that are `replaced`, by
    // their names, are gone, and all others stand in the new one.
    void give_name(const std::function<bool(const std::string&)>& replaced);

  private:
    void keep_others(const std::function<bool(const std::string&)>& replaced);

    std::filesystem::path path_, place_;
};

}  // namespace overbend::output
