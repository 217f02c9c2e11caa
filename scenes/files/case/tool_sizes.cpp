#include "scenes/files/case/tool_sizes.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/key_list.h"

namespace overbend::files {

namespace {

// The lengths and angles of a shape and of its faces, in the order in which they are described.
class Sizes : public Fields {
  public:
    // as_usual: of each size, whether it is to be as usual again; value: of the size `changed`.
    Sizes(std::vector<bool> as_usual, int changed, double value)
        : as_usual_(std::move(as_usual)), changed_(changed), value_(value) {}
    Sizes() = default;

    std::vector<ToolSize> found;
    std::vector<bool> were_as_usual;

    void number(const Key& key, const Range&, double& value) override { see(key, value, false); }
    void number_or(const Key& key, const Range&, double& value, const Usual& usual) override {
        const std::size_t at = found.size();
        if (at < as_usual_.size() && as_usual_[at]) value = usual.value;
        see(key, value, usual.words && value == usual.value);
    }
    void list(const Key& key, std::size_t count, const std::function<void(std::size_t)>&,
              const ShowEach& show, const Keys&) override {
        const std::string one = label_of(key.name).substr(0, label_of(key.name).size() - 1);
        for (std::size_t i = 0; i < count; ++i) {
            of_ = count > 1 ? " of " + one + " " + std::to_string(i + 1) : "";
            show(*this, i);
        }
        of_.clear();
    }

  private:
    void see(const Key& key, double& value, bool as_usual) {
        if (static_cast<int>(found.size()) == changed_) value = value_;
        const SizeUnit unit = unit_of(key.name) == "degrees" ? SizeUnit::rad : SizeUnit::mm;
        found.push_back({label_of(key.name) + of_, key.name, unit, value});
        were_as_usual.push_back(as_usual);
    }

    std::vector<bool> as_usual_;
    int changed_ = -1;
    double value_ = 0.0;
    std::string of_;
};

void show(Fields& sizes, Tool& tool) {
    if (!std::holds_alternative<OutlineTool>(tool.shape)) kind_of(tool.shape).describe(sizes, tool.shape);
}

}  // namespace

std::vector<ToolSize> sizes_of(const Tool& tool) {
    Tool copy = tool;
    Sizes sizes;
    show(sizes, copy);
    return sizes.found;
}

void set_size(Tool& tool, int size, double value) {
    Tool before = tool;
    Sizes sizes;
    show(sizes, before);
    Sizes changed(sizes.were_as_usual, size, value);
    show(changed, tool);
}

}  // namespace overbend::files
