// overbend case: what may stand in a case, and one to start from.

#include <algorithm>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

#include "scenes/commands/commands.h"
#include "scenes/commands/options.h"
#include "scenes/files/case/key_reference.h"

namespace overbend::commands {

namespace {

struct CaseOptions {
    bool keys = false, fresh = false, markdown = false, json = false;
};

const char* const starting_case = R"(# A case to start from: an angle of 90 degrees in a V die.
# overbend case --keys lists every key; overbend check FILE runs the case.

format = 1
title = "Angle"

[strip]
material = "dc01"     # overbend list materials shows all cards
thickness_mm = 1.0
width_mm = 20.0

[part]                # the drawing: flats and bends in turn, from the left
path = [
  { flat_mm = 25.0 },
  { bend_deg = 90.0, inside_radius_mm = 0.9, name = "corner" },  # positive turns the right-hand side up
  { flat_mm = 30.0 },
]
angle_tolerance_deg = 1.0

[[tool]]
name = "punch"
kind = "vee-punch"
angle_deg = 82.0
nose_radius_mm = 1.0

[[tool]]
name = "die"
kind = "vee-die"
faces = [ { angle_deg = 84.0, opening_mm = 8.0 } ]

[[step]]              # a stroke; without a stop, it presses to the angle of the drawing
name = "corner"
bends = ["corner"]
punch = "punch"
die = "die"
)";

std::string full_name(const files::KeyEntry& key) {
    return key.table.empty() ? key.name : key.table + "." + key.name;
}

std::string left_out(const files::KeyEntry& key) {
    return key.required ? "required" : key.usual;
}

// The keys of one table, those of each kind together.
std::vector<std::vector<files::KeyEntry>> by_kind(const files::Keys& keys) {
    std::vector<std::vector<files::KeyEntry>> groups;
    for (const files::KeyEntry& key : keys) {
        auto found = std::find_if(groups.begin(), groups.end(),
                                  [&](const auto& group) { return group.front().kind == key.kind; });
        if (found == groups.end()) found = groups.insert(groups.end(), std::vector<files::KeyEntry>());
        found->push_back(key);
    }
    return groups;
}

void print_markdown() {
    std::cout
        << "# Keys\n\n"
           "Every key of cases, racks and cards, as `overbend case --keys --markdown` prints it. A key with\n"
           "a dot stands in a table within the table. [Drawing and case](drawing-and-case.md) explains how\n"
           "keys are used.\n";
    for (const files::ReferenceTable& table : files::key_reference()) {
        std::cout << "\n## " << table.words << (table.header.empty() ? "" : ": `" + table.header + "`")
                  << "\n";
        for (const auto& group : by_kind(table.keys)) {
            if (!group.front().kind.empty()) std::cout << "\n### " << group.front().kind << "\n";
            std::cout << "\n| key | unit | values | default | what it is | example |\n"
                         "| --- | --- | --- | --- | --- | --- |\n";
            for (const files::KeyEntry& key : group)
                std::cout << "| `" << full_name(key) << "` | " << key.unit << " | " << key.values << " | "
                          << left_out(key) << " | " << key.words << " | "
                          << (key.example.empty() ? "" : "`" + key.example + "`") << " |\n";
        }
    }
}

void print_text() {
    for (const files::ReferenceTable& table : files::key_reference()) {
        std::cout << (table.header.empty() ? "" : table.header + "  ") << table.words << "\n";
        for (const auto& group : by_kind(table.keys)) {
            if (!group.front().kind.empty()) std::cout << "  " << group.front().kind << "\n";
            for (const files::KeyEntry& key : group)
                std::cout << "    " << full_name(key) << (key.unit.empty() ? "" : " (" + key.unit + ")")
                          << ": " << key.words << "\n        " << key.values << "; "
                          << (key.required ? "required" : "default: " + key.usual) << "\n";
        }
        std::cout << "\n";
    }
}

void print_as_json() {
    nlohmann::ordered_json tables = nlohmann::ordered_json::array();
    for (const files::ReferenceTable& table : files::key_reference()) {
        nlohmann::ordered_json keys = nlohmann::ordered_json::array();
        for (const files::KeyEntry& key : table.keys)
            keys.push_back({{"key", full_name(key)},
                            {"kind", key.kind},
                            {"unit", key.unit},
                            {"values", key.values},
                            {"required", key.required},
                            {"left_out", key.usual},
                            {"words", key.words},
                            {"example", key.example}});
        tables.push_back({{"table", table.header}, {"words", table.words}, {"keys", keys}});
    }
    print_json({{"tables", tables}});
}

Exit show_case(const CaseOptions& options) {
    if (options.keys == options.fresh)
        complain("--keys, --new",
                 "give one of them: --keys for the reference, --new for a case to start from");
    if (options.fresh && (options.markdown || options.json))
        complain("--new", "a case is printed as its file; remove --json and --markdown");
    if (options.fresh)
        std::cout << starting_case;
    else if (options.markdown)
        print_markdown();
    else if (options.json)
        print_as_json();
    else
        print_text();
    return Exit::done;
}

}  // namespace

void add_case(Program& app) {
    Command command = app.command("case", "Every key of a case file, or a case to start from");
    const auto options = std::make_shared<CaseOptions>();
    command.flag("--keys", options->keys, "Every key: values, unit, default");
    command.flag("--new", options->fresh, "A case to start from, with comments");
    command.flag("--json", options->json, "The keys as one JSON object");
    command.flag("--markdown", options->markdown, "The keys as a page of Markdown");
    command.footer("Example: overbend case --new > angle.toml");
    command.runs([options] { return show_case(*options); });
}

}  // namespace overbend::commands
