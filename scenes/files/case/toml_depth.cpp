#include "scenes/files/case/toml_depth.h"

#include "scenes/files/reading/most.h"

namespace overbend::files {

namespace {

// Walks over a text once, passing over what is quoted or a comment.
class Walk {
  public:
    explicit Walk(const std::string& text) : text_(text) {}

    std::optional<TooDeep> run() {
        for (; at_ < text_.size(); step()) {
            const char c = text_[at_];
            if (c == '#') pass_comment();
            if (c == '"' || c == '\'') pass_quoted(c);
            if (c == '[' || c == '{') ++open_;
            if ((c == ']' || c == '}') && open_ > 0) --open_;
            if (c == '.') ++dots_;
            // Whatever ends a key or a value; a number or a date has one dot.
            if (std::string("=,[]{}\n").find(c) != std::string::npos) dots_ = 0;
            if (dots_ >= most::key_parts)
                return found("this key has more than " + std::to_string(most::key_parts) + " parts",
                             "no key that is known here has more than 2");
            if (open_ > most::nesting)
                return found("brackets stand more than " + std::to_string(most::nesting) + " deep",
                             "no table or list that is known here is so deep");
        }
        return {};
    }

  private:
    void step() {
        if (at_ < text_.size() && text_[at_] == '\n') ++line_, line_start_ = at_ + 1;
        ++at_;
    }
    bool stands(const std::string& mark) const { return text_.compare(at_, mark.size(), mark) == 0; }
    // Up to the last letter before the end of the line.
    void pass_comment() {
        while (at_ + 1 < text_.size() && text_[at_ + 1] != '\n') step();
    }
    // Up to its last quote, or to the end of a line that should have had it.
    void pass_quoted(char quote) {
        const std::string three(3, quote);
        const std::string end = stands(three) ? three : std::string(1, quote);
        for (std::size_t i = 0; i < end.size(); ++i) step();
        while (at_ < text_.size() && !stands(end)) {
            if (end.size() == 1 && at_ + 1 < text_.size() && text_[at_ + 1] == '\n') return;
            if (text_[at_] == '\\' && quote == '"') step();
            step();
        }
        for (std::size_t i = 1; i < end.size(); ++i) step();
    }
    TooDeep found(const std::string& wrong, const std::string& right) const {
        return {line_, static_cast<int>(at_ - line_start_) + 1, wrong, right};
    }

    const std::string& text_;
    std::size_t at_ = 0, line_start_ = 0;
    int line_ = 1, open_ = 0, dots_ = 0;
};

}  // namespace

std::optional<TooDeep> too_deep(const std::string& text) {
    return Walk(text).run();
}

}  // namespace overbend::files
