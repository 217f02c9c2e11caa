#include "scenes/files/case/strict_table.h"

#include <toml++/toml.h>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/key_list.h"
#include "scenes/files/case/nearest_key.h"
#include "scenes/files/reading/letters.h"
#include "scenes/files/reading/most.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::files {

namespace {

// Sources are sentences, and paths may be long; what else is a text is a name, and is drawn.
std::size_t most_letters(std::string_view key) {
    static const Words long_ones = {"source", "file", "material", "rack", "press", "steel"};
    const bool is_long = std::find(long_ones.begin(), long_ones.end(), key) != long_ones.end();
    return is_long ? most::text_letters : most::name_letters;
}

std::string text_remedy(std::size_t letters) {
    return "give a text in quotes, on one line, of at most " + std::to_string(letters) + " letters";
}

std::string remedy(const Range& range, std::string_view key) {
    const std::string unit = unit_of(std::string(key));
    return "give a number " + range_words(range) + (unit.empty() ? "" : " (" + unit + ")");
}

// What a value is, in words, for messages about a value of the wrong kind.
std::string described(const toml::node& node) {
    if (const auto* text = node.as_string()) return in_quotes(text->get()) + " is a text";
    if (const auto* whole = node.as_integer()) return std::to_string(whole->get()) + " is a number";
    if (const auto* number = node.as_floating_point()) return written(number->get()) + " is a number";
    if (const auto* truth = node.as_boolean())
        return truth->get() ? "true is a yes or no" : "false is a yes or no";
    if (node.is_array()) return "this is a list";
    if (node.is_table()) return "this is a table";
    return "this is a date or a time";
}

// For messages; not cut through the middle of a UTF-8 character.
std::string shortened(std::string_view text) {
    std::size_t end = std::min<std::size_t>(text.size(), 60);
    while (end > 0 && end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
    return std::string(text.substr(0, end)) + (end < text.size() ? "..." : "");
}

// What is wrong with a value that must be a number within the range; empty when nothing is.
std::string wrong_as_number(const toml::node& node, const Range& range) {
    const std::optional<double> value = node.is_number() ? node.value<double>() : std::nullopt;
    if (!value) return described(node);
    return range.holds(*value) ? "" : written(*value) + " is out of range";
}

std::string wrong_as_text(const toml::node& node, std::size_t most) {
    const auto* text = node.as_string();
    if (!text) return described(node);
    if (text->get().empty()) return "the text is empty";
    const std::string wrong = wrong_letters(text->get());
    if (!wrong.empty()) return wrong;
    const std::size_t letters = letter_count(text->get());
    return letters > most ? "the text has " + std::to_string(letters) + " letters" : "";
}

}  // namespace

std::string range_words(const Range& range) {
    const bool low_in = range.low_end == Range::End::included;
    const bool high_in = range.high_end == Range::End::included;
    return (low_in ? "from " : "above ") + written(range.low) +
           (high_in ? (low_in ? " to " : ", at most ") : (low_in ? ", below " : " and below ")) +
           written(range.high);
}

bool Range::holds(double value) const {
    const bool above = low_end == End::included ? value >= low : value > low;
    const bool below = high_end == End::included ? value <= high : value < high;
    return above && below;
}

StrictTable::StrictTable(const TomlFile& file) : file_(&file.file), table_(file.root.get()) {}

StrictTable::StrictTable(const std::string& file, const toml::table& table, std::string path, int line,
                         Words keys)
    : file_(&file), table_(&table), path_(std::move(path)), line_(line) {
    // A table that is only implied ([a.b] implies [a]) has no line of its own: it keeps its parent's.
    if (table.source().begin.line > 0) line_ = static_cast<int>(table.source().begin.line);
    if (!keys.empty()) expect(std::move(keys));
}

void StrictTable::expect(Words keys) {
    keys_ = std::move(keys);
    for (const std::string& key : present()) {
        if (std::find(keys_.begin(), keys_.end(), key) != keys_.end()) continue;
        complain(key, "unknown key",
                 "the nearest is " + nearest_key(key, keys_) + "; all keys here: " + listed(keys_));
    }
}

bool StrictTable::has(std::string_view key) const {
    return table_->get(key) != nullptr;
}

bool StrictTable::is_text(std::string_view key) const {
    const toml::node* node = find(key);
    return node && node->is_string();
}

bool StrictTable::is_table(std::string_view key) const {
    const toml::node* node = find(key);
    return node && node->is_table();
}

double StrictTable::number(std::string_view key, const Range& range) const {
    const toml::node& node = needed(key, remedy(range, key));
    const std::string wrong = wrong_as_number(node, range);
    if (!wrong.empty()) complain(key, wrong, remedy(range, key));
    return *node.value<double>();
}

std::vector<double> StrictTable::numbers(std::string_view key, const Range& range) const {
    std::vector<double> found;
    for (const toml::node& element : needed_list(key, "give a list of numbers")) {
        const std::string wrong = wrong_as_number(element, range);
        if (!wrong.empty()) complain_in_list(key, found.size(), wrong, remedy(range, key));
        found.push_back(*element.value<double>());
    }
    return found;
}

int StrictTable::whole_number(std::string_view key, int low, int high) const {
    const std::string right =
        "give a whole number from " + std::to_string(low) + " to " + std::to_string(high);
    const toml::node& node = needed(key, right);
    const std::string wrong = wrong_as_number(node, from_to(low, high));
    if (!wrong.empty()) complain(key, wrong, right);
    const double value = *node.value<double>();
    if (value != std::floor(value)) complain(key, written(value) + " is not a whole number", right);
    return static_cast<int>(value);
}

bool StrictTable::truth(std::string_view key) const {
    const toml::node& node = needed(key, "give true or false");
    if (!node.is_boolean()) complain(key, described(node), "give true or false");
    return node.as_boolean()->get();
}

std::string StrictTable::text(std::string_view key) const {
    return text(key, most_letters(key), text_remedy(most_letters(key)));
}

std::string StrictTable::sentence(std::string_view key) const {
    return text(key, most::text_letters, text_remedy(most::text_letters));
}

std::string StrictTable::text(std::string_view key, std::size_t most, const std::string& right) const {
    const toml::node& node = needed(key, right);
    const std::string wrong = wrong_as_text(node, most);
    if (!wrong.empty()) complain(key, wrong, right);
    return node.as_string()->get();
}

Words StrictTable::texts(std::string_view key) const {
    const char* const right = "give a list of texts in quotes";
    const toml::array& list = needed_list(key, right);
    if (list.empty()) complain(key, "the list is empty", right);

    Words found;
    for (const toml::node& element : list) {
        const std::string wrong = wrong_as_text(element, most::name_letters);
        if (!wrong.empty()) complain_in_list(key, found.size(), wrong, text_remedy(most::name_letters));
        found.push_back(element.as_string()->get());
    }
    return found;
}

std::string StrictTable::word(std::string_view key, const Words& choices) const {
    const std::string right = "give one of: " + listed(choices);
    std::string found = text(key, most::name_letters, right);
    if (std::find(choices.begin(), choices.end(), found) == choices.end()) {
        complain(key, in_quotes(found) + " is not known here",
                 "the nearest is " + nearest_key(found, choices) + "; " + right);
    }
    return found;
}

StrictTable StrictTable::table(std::string_view key, Words keys) const {
    const std::string right = "give a table" + (keys.empty() ? "" : " with the keys: " + listed(keys));
    const toml::node& node = needed(key, right);
    if (!node.is_table()) complain(key, described(node), right);
    return StrictTable(*file_, *node.as_table(), path_of(key), line_, std::move(keys));
}

std::vector<StrictTable> StrictTable::tables(std::string_view key, const Words& keys) const {
    const std::string right = "give tables" + (keys.empty() ? "" : " with the keys: " + listed(keys));
    if (!find(key)) return {};
    std::vector<StrictTable> found;
    for (const toml::node& element : needed_list(key, "give a list; " + right)) {
        if (!element.is_table()) complain_in_list(key, found.size(), described(element), right);
        const std::string path = path_of(key) + "[" + std::to_string(found.size() + 1) + "]";
        found.push_back(StrictTable(*file_, *element.as_table(), path, line_, keys));
    }
    return found;
}

Words StrictTable::present() const {
    Words found;
    for (const auto& [key, value] : *table_) found.emplace_back(key.str());
    return found;
}

void StrictTable::complain(std::string_view key, const std::string& wrong, const std::string& right) const {
    const auto found = table_->find(key);
    const toml::source_position place =
        found != table_->end() ? found->first.source().begin : table_->source().begin;
    complain_at(place, path_of(key), wrong, right);
}

void StrictTable::complain(std::string_view key, const OutOfRange& error) const {
    complain(key, error.name + ": " + error.wrong, error.right);
}

void StrictTable::complain_in_list(std::string_view key, std::size_t index, const std::string& wrong,
                                   const std::string& right) const {
    const toml::node* element = table_->at(key).as_array()->get(index);
    complain_at(element->source().begin, path_of(key) + "[" + std::to_string(index + 1) + "]", wrong, right);
}

void StrictTable::check_count(std::string_view key, std::size_t count, std::size_t most) const {
    if (count > most)
        complain(key, std::to_string(count) + " entries are too many",
                 "give at most " + std::to_string(most));
}

void StrictTable::complain_missing(std::string_view key, const std::string& right) const {
    complain(key, "this key is missing", right);
}

const toml::node* StrictTable::find(std::string_view key) const {
    assert((keys_.empty() || std::find(keys_.begin(), keys_.end(), key) != keys_.end()) &&
           "asked for a key that is not allowed here");
    return table_->get(key);
}

const toml::node& StrictTable::needed(std::string_view key, const std::string& right) const {
    const toml::node* node = find(key);
    if (!node) complain_missing(key, right);
    return *node;
}

const toml::array& StrictTable::needed_list(std::string_view key, const std::string& right) const {
    const toml::node& node = needed(key, right);
    if (!node.is_array()) complain(key, described(node), right);
    check_count(key, node.as_array()->size(), most::entries);
    return *node.as_array();
}

std::string StrictTable::path_of(std::string_view key) const {
    if (key.empty()) return path_;
    return path_.empty() ? shortened(key) : path_ + "." + shortened(key);
}

void StrictTable::complain_at(const toml::source_position& place, const std::string& path,
                              const std::string& wrong, const std::string& right) const {
    const bool known = place.line > 0;
    throw CaseError(*file_, known ? static_cast<int>(place.line) : line_,
                    known ? static_cast<int>(place.column) : 1, path, wrong, right);
}

TomlFile open_asset(const StrictTable& table, std::string_view key, const std::filesystem::path& beside,
                    const AssetKind& kind) {
    try {
        return read_toml(file_of(table.text(key), beside, kind));
    } catch (const CaseError& error) {
        if (error.line > 0) throw;
        table.complain(key, error.wrong + " (" + error.file + ")", error.right);
    }
}

std::string written(double value) {
    return words("%.15g", value);
}

std::string worked_out(double value) {
    return words("%.6g", value);
}

std::string in_quotes(std::string_view text) {
    return "\"" + shortened(text) + "\"";
}

}  // namespace overbend::files
