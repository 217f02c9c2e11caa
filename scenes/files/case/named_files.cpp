#include "scenes/files/case/named_files.h"

#include <algorithm>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/named_asset.h"

namespace overbend::files {

namespace {

class Files {
  public:
    void add(const std::filesystem::path& file) {
        if (!file.empty() && std::find(found_.begin(), found_.end(), file) == found_.end())
            found_.push_back(file);
    }
    // Paths in a case are right from any folder.
    void add(const std::string& name_or_path, const AssetKind& kind) {
        if (name_or_path.empty()) return;
        try {
            add(file_of(name_or_path, {}, kind));
        } catch (const CaseError&) {  // what came with the program is gone
        }
    }
    std::vector<std::filesystem::path> found() const { return found_; }

  private:
    std::vector<std::filesystem::path> found_;
};

void add_card(const Case& c, Files& files) {
    if (c.card_origin.from == CardOrigin::From::file) files.add(c.card_origin.file);
    if (c.card_origin.from == CardOrigin::From::assets) files.add(c.material.name, material_cards);
}

}  // namespace

std::vector<std::filesystem::path> files_of(const Case& c) {
    Files files;
    files.add(c.file);
    add_card(c, files);
    files.add(c.rack, tool_racks);
    files.add(c.press_name, presses);
    for (const Tool& tool : c.tools) {
        files.add(tool.make.steel, tool_steels);
        const OutlineTool* const outline = std::get_if<OutlineTool>(&tool.shape);
        if (outline != nullptr && outline->file) files.add(outline->file->path);
    }
    return files.found();
}

}  // namespace overbend::files
