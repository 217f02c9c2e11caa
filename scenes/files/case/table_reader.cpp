#include "scenes/files/case/table_reader.h"

#include <algorithm>

#include "scenes/files/case/key_list.h"
#include "scenes/files/case/nearest_key.h"

namespace overbend::files {

namespace {

class Reader : public Fields {
  public:
    Reader(StrictTable table, const Keys& keys) : table_(std::move(table)), keys_(keys) {
        for (const KeyEntry& key : keys_)
            if (is_own(key) && !key.kind.empty() && (kinds_.empty() || kinds_.back() != key.kind))
                kinds_.push_back(key.kind);
    }

    // Narrows the keys that may stand there.
    void expect() {
        if (kinds_.empty()) return table_.expect(key_names(keys_));
        const auto by_word = std::find_if(keys_.begin(), keys_.end(), [&](const KeyEntry& key) {
            return is_own(key) && key.values == listed(kinds_);
        });
        if (by_word == keys_.end()) return expect_by_presence();
        if (!table_.has(by_word->name)) table_.expect(key_names(keys_));
        const std::string word = table_.word(by_word->name, kinds_);
        chosen_ = static_cast<int>(std::find(kinds_.begin(), kinds_.end(), word) - kinds_.begin());
        table_.expect(key_names(keys_, word));
    }

    void number(const Key& key, const Range& range, double& value) override {
        value = in_case(key.name, table_.number(key.name, range));
    }
    void number_either(const Key& key, const Key& other, const Range& range, double& value,
                       double less) override {
        const std::string either =
            std::string("give ") + key.name + ", " + range_words(range) + ", or " + other.name + " instead";
        if (!table_.has(key.name) && !table_.has(other.name)) table_.complain_missing(key.name, either);
        if (!table_.has(other.name)) return number(key, range, value);
        if (table_.has(key.name))
            table_.complain(other.name, std::string("stands beside ") + key.name, either);
        number(other, range, value);
        value += less;
    }
    void number_or_word(const Key& key, const Range& range, const char* word, std::optional<double>& value,
                        bool& worded) override {
        worded = table_.is_text(key.name);
        if (!worded)
            value = in_case(key.name, table_.number(key.name, range));
        else if (table_.text(key.name) != word)
            table_.complain(key.name, in_quotes(table_.text(key.name)) + " is not known here",
                            std::string("give a number ") + range_words(range) + ", or \"" + word + "\"");
    }
    void whole(const Key& key, int low, int high, int& value) override {
        value = table_.whole_number(key.name, low, high);
    }
    void truth(const Key& key, bool& value) override { value = table_.truth(key.name); }
    void text(const Key& key, std::string& value) override { value = table_.text(key.name); }
    void texts(const Key& key, Words& value) override { value = table_.texts(key.name); }
    void numbers(const Key& key, const Range& range, std::size_t count, std::vector<double>& value) override {
        value = table_.numbers(key.name, range);
        if (count > 0 && value.size() != count)
            table_.complain(key.name, std::to_string(value.size()) + " numbers are given",
                            std::string("give ") + key.example);
    }
    void choice(const Key& key, const Words& choices, int& chosen) override {
        const std::string word = table_.word(key.name, choices);
        chosen = static_cast<int>(std::find(choices.begin(), choices.end(), word) - choices.begin());
    }
    // They must name what the table may have.
    void sources(const Key& key, std::vector<std::pair<std::string, std::string>>& value) override {
        Words numbers;
        for (const std::string& name : key_names(keys_))
            if (name != "title" && name != "source" && name != key.name) numbers.push_back(name);
        const StrictTable inner = table_.table(key.name, numbers);
        for (const std::string& name : inner.present()) value.emplace_back(name, inner.sentence(name));
    }
    void within(const Key& key, const Show& show, const Keys& keys) override {
        read_fields(table_.table(key.name, {}), keys, show);
    }
    void name_or_within(const Key& key, std::string& name, const Show& show, const Keys& keys) override {
        const std::string right = std::string("give a name, or ") + key.example;
        if (!table_.has(key.name)) table_.complain_missing(key.name, right);
        if (table_.is_text(key.name))
            name = table_.text(key.name);
        else if (table_.is_table(key.name))
            within(key, show, keys);
        else
            table_.complain(key.name, "it is neither a name nor a table", right);
    }
    void list(const Key& key, std::size_t, const std::function<void(std::size_t)>& resize,
              const ShowEach& show, const Keys& keys) override {
        if (!table_.has(key.name))
            table_.complain_missing(
                key.name, std::string("give a list such as ") + key.example + " (" + key.words + ")");
        const std::vector<StrictTable> entries = table_.tables(key.name, {});
        resize(entries.size());
        for (std::size_t i = 0; i < entries.size(); ++i)
            read_fields(entries[i], keys, [&](Fields& f) { show(f, i); });
    }
    bool choose(const Key&, const Words&, int& chosen, const ShowEach&) override {
        chosen = chosen_;
        return true;
    }
    bool stands(const Key& key, const Usual&, bool) override { return table_.has(key.name); }

  private:
    static bool is_own(const KeyEntry& key) { return key.table.empty(); }  // not of a table within

    void expect_by_presence() {
        table_.expect(key_names(keys_));
        for (const KeyEntry& key : keys_)
            if (is_own(key) && key.kind != kinds_.front() && !key.kind.empty() && table_.has(key.name))
                chosen_ =
                    static_cast<int>(std::find(kinds_.begin(), kinds_.end(), key.kind) - kinds_.begin());
        table_.expect(key_names(keys_, kinds_[static_cast<std::size_t>(chosen_)]));
    }

    StrictTable table_;
    const Keys& keys_;
    Words kinds_;
    int chosen_ = 0;
};

}  // namespace

void read_fields(StrictTable table, const Keys& keys, const Fields::Show& show) {
    Reader reader(std::move(table), keys);
    reader.expect();
    show(reader);
}

}  // namespace overbend::files
