// A table of a TOML file, read strictly: an unknown key, a value of the wrong kind or out of its range
// is a CaseError with its file, line and key, so that the readers are lists of plain lines.
//
// Only the readers in scenes/files/case include this; nothing else depends on TOML.

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/range.h"
#include "scenes/files/case/toml_file.h"

namespace overbend {
struct OutOfRange;
}

namespace overbend::files {

// A view: the TomlFile must outlive it.
class StrictTable {
  public:
    // The whole file as one table. Anything is allowed in it until the expected keys are set.
    explicit StrictTable(const TomlFile& file);

    // All keys that may stand in it; called again to narrow them, once it is known what it is (a tool's
    // kind, a law's name). Throws CaseError for any other key.
    void expect(Words keys);

    bool has(std::string_view key) const;
    // There, and of that kind: for keys that take a name or a table.
    bool is_text(std::string_view key) const;
    bool is_table(std::string_view key) const;

    // A getter throws CaseError when the key is missing, of the wrong kind, or out of range.
    double number(std::string_view key, const Range& range) const;
    std::vector<double> numbers(std::string_view key, const Range& range) const;
    int whole_number(std::string_view key, int low, int high) const;
    bool truth(std::string_view key) const;
    // Not empty, on one line, of letters that can be drawn, not longer than any sensible one of that key.
    std::string text(std::string_view key) const;
    std::string sentence(std::string_view key) const;                    // the same, as long as a source
    Words texts(std::string_view key) const;                             // a list, not empty
    std::string word(std::string_view key, const Words& choices) const;  // one of them

    // keys: all that may stand in it; without any, as for the whole file. No tables: the key is missing.
    StrictTable table(std::string_view key, Words keys) const;
    std::vector<StrictTable> tables(std::string_view key, const Words& keys) const;

    // Throws CaseError where a list under the key would have more entries than that.
    void check_count(std::string_view key, std::size_t count, std::size_t most) const;

    // All keys that stand in it, in alphabetical order.
    Words present() const;

    // Throws the CaseError of a key; of the table itself when the key is empty or not there. index counts
    // from 0 in a list; what is printed counts from 1.
    [[noreturn]] void complain(std::string_view key, const std::string& wrong,
                               const std::string& right) const;
    [[noreturn]] void complain(std::string_view key, const OutOfRange& error) const;
    [[noreturn]] void complain_in_list(std::string_view key, std::size_t index, const std::string& wrong,
                                       const std::string& right) const;
    [[noreturn]] void complain_missing(std::string_view key, const std::string& right) const;

  private:
    StrictTable(const std::string& file, const toml::table& table, std::string path, int line, Words keys);
    const toml::node* find(std::string_view key) const;
    // Throw CaseError with what would be right.
    const toml::node& needed(std::string_view key, const std::string& right) const;
    const toml::array& needed_list(std::string_view key, const std::string& right) const;
    std::string text(std::string_view key, std::size_t most, const std::string& right) const;
    std::string path_of(std::string_view key) const;
    [[noreturn]] void complain_at(const toml::source_position& place, const std::string& path,
                                  const std::string& wrong, const std::string& right) const;

    const std::string* file_;
    const toml::table* table_;
    std::string path_;  // empty for the whole file
    int line_ = 1;      // of the table
    Words keys_;        // what may stand in it; empty: anything
};

// Opens the file that a key names, one that comes with the program or one of one's own.
// beside  the folder that a relative path starts from
// Throws CaseError: an unknown name or a missing file is reported at that key, a file that cannot be read
// its own.
TomlFile open_asset(const StrictTable& table, std::string_view key, const std::filesystem::path& beside,
                    const AssetKind& kind);

// A number as a person would write it: 0.05, 1000000. Six digits do for one that was worked out.
std::string written(double value);
std::string worked_out(double value);

// "name" in quotes, shortened when long.
std::string in_quotes(std::string_view text);

}  // namespace overbend::files
