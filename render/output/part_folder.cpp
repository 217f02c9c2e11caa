#include "render/output/part_folder.h"

#include <fcntl.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <stdexcept>
#include <system_error>

#include "render/output/whole_file.h"

namespace overbend::output {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void give_up(const fs::path& path, const std::string& reason) {
    throw std::runtime_error(path.string() + ": the folder cannot be written: " + reason);
}

// 0, or the error. EINVAL: the file system knows no such way.
int renamed(const fs::path& from, const fs::path& to, unsigned how) {
    return ::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), how) == 0 ? 0 : errno;
}

// Only when nothing of that name is there. Where the file system has no one step for it, a folder that is
// empty is replaced.
int moved(const fs::path& from, const fs::path& to) {
    const int error = renamed(from, to, RENAME_NOREPLACE);
    return error == EINVAL ? renamed(from, to, 0) : error;
}

// In one step, or, where the file system has none, in three.
int exchanged(const fs::path& one, const fs::path& other) {
    const int error = renamed(one, other, RENAME_EXCHANGE);
    if (error != EINVAL) return error;
    const fs::path aside = place_beside(other);
    if (const int failed = renamed(other, aside, 0)) return failed;
    if (const int failed = renamed(one, other, 0)) {
        renamed(aside, other, 0);
        return failed;
    }
    return renamed(aside, one, 0);
}

// A link to a folder stays, and the folder that it leads to is exchanged.
fs::path behind_links(const fs::path& path) {
    std::error_code error;
    if (!fs::exists(fs::symlink_status(path, error))) return path;
    if (!fs::is_directory(path, error)) give_up(path, "something that is no folder is in the way");
    const fs::path real = fs::canonical(path, error);
    if (error) give_up(path, error.message());
    return real;
}

}  // namespace

PartFolder::PartFolder(const fs::path& path) : path_(behind_links(path)), place_(place_beside(path_)) {
    std::error_code error;
    if (!fs::create_directory(place_, error)) {
        place_.clear();
        give_up(path_, error ? error.message() : "its place is taken");
    }
}

PartFolder::~PartFolder() {
    std::error_code ignored;
    if (!place_.empty()) fs::remove_all(place_, ignored);
}

void PartFolder::give_name(const std::function<bool(const std::string&)>& replaced) {
    // Another run may put its folder there, or remove it, between the two looks.
    for (int tries = 0; tries < 100; ++tries) {
        int error = moved(place_, path_);
        if (error == 0) return place_.clear();
        if (error != EEXIST && error != ENOTEMPTY) give_up(path_, std::strerror(error));
        error = exchanged(place_, path_);
        if (error == 0) return keep_others(replaced);
        if (error != ENOENT) give_up(path_, std::strerror(error));
    }
    give_up(path_, "other programs keep changing it");
}

// What stood at the path stands at our place now.
void PartFolder::keep_others(const std::function<bool(const std::string&)>& replaced) {
    const fs::path old = place_;
    place_.clear();
    std::error_code error;
    for (const fs::directory_entry& entry : fs::directory_iterator(old, error)) {
        const fs::path name = entry.path().filename();
        if (replaced(name.string())) continue;
        if (const int failed = moved(entry.path(), path_ / name))
            give_up(path_, (old / name).string() + " cannot be moved into it: " + std::strerror(failed));
    }
    if (error) give_up(path_, error.message());
    fs::remove_all(old, error);
}

}  // namespace overbend::output
