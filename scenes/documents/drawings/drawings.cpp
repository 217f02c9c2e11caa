#include "scenes/documents/drawings/drawings.h"

#include <set>

#include "scenes/documents/drawings/blank_sheet.h"
#include "scenes/documents/drawings/dxf_drawings.h"
#include "scenes/documents/drawings/part_sheet.h"
#include "scenes/documents/drawings/tool_sheet.h"

namespace overbend::documents {

namespace {

std::vector<int> tools_used(const files::Case& c) {
    std::set<int> used;
    for (const files::Step& step : c.steps)
        for (const int tool : step.tools()) used.insert(tool);
    if (c.steps.empty())
        for (std::size_t i = 0; i < c.tools.size(); ++i) used.insert(static_cast<int>(i));
    return {used.begin(), used.end()};
}

struct Plan {
    std::string file;
    drawing::DrawingSheet sheet;
    files::DxfDrawing dxf;
};

// Two names that come to the same file get numbers.
std::string unlike(const std::string& wanted, std::set<std::string>& taken) {
    std::string name = wanted;
    for (int i = 2; !taken.insert(name).second; ++i) name = wanted + "-" + std::to_string(i);
    return name;
}

// As its card says; a steel without a card by its name; "not stated" where the case names none.
std::string material_of(const files::Tool& tool) {
    if (tool.make.card) return tool.make.card->title;
    return tool.make.steel.empty() ? drawing::DrawingSheet{}.material : tool.make.steel;
}

}  // namespace

std::string safe_file_name(const std::string& name) {
    std::string safe;
    for (const char c : name) {
        const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        const bool plain = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9');
        if (plain)
            safe += small;
        else if (!safe.empty() && safe.back() != '-')
            safe += '-';
    }
    safe = safe.substr(0, 60);
    while (!safe.empty() && safe.back() == '-') safe.pop_back();
    return safe.empty() ? "x" : safe;
}

std::vector<Drawing> all_drawings(const files::Case& c, const job::FlatPattern& pattern,
                                  drawing::Tolerances tolerances) {
    std::vector<Plan> plans;
    std::set<std::string> taken;
    for (const int i : tools_used(c)) {
        plans.push_back({unlike("tool-" + safe_file_name(c.tools[i].name), taken),
                         tool_sheet(c.tools[i], tolerances), tool_dxf(c.tools[i])});
        plans.back().sheet.material = material_of(c.tools[i]);
    }
    plans.push_back({"blank", blank_sheet(c, pattern, tolerances), blank_dxf(c, pattern.blank)});
    plans.push_back({"part", part_sheet(c, tolerances), part_dxf(c)});
    std::vector<Drawing> drawings;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        plans[i].sheet.title = c.title;
        plans[i].sheet.number = static_cast<int>(i) + 1;
        plans[i].sheet.of = static_cast<int>(plans.size());
        drawings.push_back({plans[i].file, plans[i].sheet.name, plans[i].sheet.material,
                            drawing::draw_sheet(plans[i].sheet), std::move(plans[i].dxf)});
    }
    return drawings;
}

}  // namespace overbend::documents
