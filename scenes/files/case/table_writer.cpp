#include "scenes/files/case/table_writer.h"

#include "scenes/files/case/key_list.h"

namespace overbend::files {

namespace {

class Writer : public Fields {
  public:
    Entries entries;

    void number(const Key& key, const Range&, double& value) override {
        entries.as_is(key.name, number_text(in_file(key.name, value)));
    }
    void number_or_word(const Key& key, const Range&, const char* word, std::optional<double>& value,
                        bool& worded) override {
        if (worded)
            entries.text(key.name, word);
        else
            entries.as_is(key.name, number_text(in_file(key.name, *value)));
    }
    void whole(const Key& key, int, int, int& value) override {
        entries.as_is(key.name, std::to_string(value));
    }
    void truth(const Key& key, bool& value) override { entries.as_is(key.name, value ? "true" : "false"); }
    void text(const Key& key, std::string& value) override { entries.text(key.name, value); }
    void texts(const Key& key, Words& value) override { entries.as_is(key.name, texts_text(value)); }
    void numbers(const Key& key, const Range&, std::size_t, std::vector<double>& value) override {
        entries.as_is(key.name, numbers_text(value));
    }
    void choice(const Key& key, const Words& choices, int& chosen) override {
        entries.text(key.name, choices[static_cast<std::size_t>(chosen)]);
    }
    void sources(const Key& key, std::vector<std::pair<std::string, std::string>>& value) override {
        for (const auto& [name, source] : value) entries.text(std::string(key.name) + "." + name, source);
    }
    void within(const Key& key, const Show& show, const Keys&) override {
        const Entries inner = fields_written(show);
        if (!inner.empty()) entries.as_is(key.name, inner.inline_table());
    }
    // The name alone where there is nothing else to tell.
    void name_or_within(const Key& key, std::string& name, const Show& show, const Keys&) override {
        const Entries inner = fields_written(show);
        entries.as_is(key.name, inner.count() == 1 ? files::quoted(name) : inner.inline_table());
    }
    void list(const Key& key, std::size_t count, const std::function<void(std::size_t)>&,
              const ShowEach& show, const Keys&) override {
        std::vector<std::string> tables;
        for (std::size_t i = 0; i < count; ++i)
            tables.push_back(fields_written([&](Fields& f) { show(f, i); }).inline_table());
        entries.as_is(key.name, list_text(tables));
    }
    bool choose(const Key& key, const Words& kinds, int& chosen, const ShowEach&) override {
        if (*key.name) choice(key, kinds, chosen);
        return true;
    }
};

}  // namespace

Entries fields_written(const Fields::Show& show) {
    Writer writer;
    show(writer);
    return writer.entries;
}

}  // namespace overbend::files
