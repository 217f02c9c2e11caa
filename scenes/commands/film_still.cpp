#include "scenes/commands/film_still.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "render/picture/painter.h"
#include "scenes/commands/options.h"
#include "scenes/commands/shown_steps.h"

namespace overbend::commands {

namespace {

using film::Passage;

const std::vector<std::pair<std::string, Passage>>& passage_words() {
    static const std::vector<std::pair<std::string, Passage>> words = {
        {"placed", Passage::placed}, {"approach", Passage::approach}, {"press", Passage::press},
        {"dwell", Passage::dwell},   {"retract", Passage::retract},   {"free", Passage::free},
        {"title", Passage::title},   {"finished", Passage::finished}};
    return words;
}

bool is_card(Passage passage) {
    return passage == Passage::title || passage == Passage::finished;
}

std::optional<Passage> passage_named(const std::string& word) {
    for (const auto& [known, passage] : passage_words())
        if (known == word) return passage;
    return {};
}

[[noreturn]] void refuse(const std::string& words) {
    complain(
        "--still",
        "\"" + words +
            "\" is not a time in the film; give STEP:PHASE, with placed, approach, press, dwell, retract or "
            "free, such as \"1:free\"; title or finished; or seconds from the start of the film");
}

// "lip:free" as it may stand in a file's name.
std::string file_words(const std::string& words) {
    std::string name;
    for (const char c : words) {
        const bool plain = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                           c == '.' || c == '-' || static_cast<unsigned char>(c) >= 0x80;
        name += plain ? c : '_';
    }
    return name;
}

}  // namespace

StillWanted read_still(const files::Case& c, const std::string& words) {
    StillWanted still;
    still.words = words;
    const std::size_t colon = words.rfind(':');
    if (colon == std::string::npos) {
        const std::optional<Passage> card = passage_named(words);
        if (card && is_card(*card)) {
            still.passage = *card;
            return still;
        }
        char* end = nullptr;
        const bool number = !words.empty() && words.find_first_not_of("0123456789.") == std::string::npos;
        const double second = number ? std::strtod(words.c_str(), &end) : 0.0;
        if (!number || *end != '\0' || !std::isfinite(second)) refuse(words);
        still.second = second;
        return still;
    }
    const std::optional<Passage> passage = passage_named(words.substr(colon + 1));
    if (!passage || is_card(*passage)) refuse(words);
    still.passage = *passage;
    still.step = step_named(c, words.substr(0, colon), "--still");
    return still;
}

int frame_of(const StillWanted& still, const picture::ShownJob& job, const film::FrameList& frames) {
    const int count = static_cast<int>(frames.instants.size());
    if (still.second) {
        const int frame =
            static_cast<int>(std::floor(std::min(1e8, *still.second * frames.frames_per_second)));
        if (frame >= count)
            complain("--still", still.words + " s is after the end of the film; it lasts " +
                                    fixed(count / frames.frames_per_second, 2) + " s");
        return frame;
    }
    std::vector<int> found;
    for (int i = 0; i < count; ++i) {
        const film::Instant& m = frames.instants[i];
        if (m.passage != still.passage) continue;
        if (is_card(m.passage) || job.strokes[m.stroke].number == still.step + 1) found.push_back(i);
    }
    if (found.empty())
        complain(
            "--still",
            "\"" + still.words +
                "\" is not in the film; include its step with --steps, or turn cards on with --cards on");
    const bool moves = still.passage == Passage::approach || still.passage == Passage::press ||
                       still.passage == Passage::retract;
    if (moves) return found[found.size() / 2];
    // The free strip before a springback that is drawn larger goes back to its true size.
    const double large = frames.instants[found.front()].springback_scale;
    for (auto i = found.rbegin(); i != found.rend(); ++i)
        if (frames.instants[*i].springback_scale == large) return *i;
    return found.back();
}

std::vector<std::filesystem::path> write_still(const picture::DrawingList& list, const StillWanted& still,
                                               const std::filesystem::path& folder,
                                               const std::vector<std::string>& forms) {
    std::vector<std::filesystem::path> files;
    for (const std::string& form : forms) {
        files.push_back(folder / ("still_" + file_words(still.words) + (still.second ? "s." : ".") + form));
        if (form == "svg") picture::write_svg(list, files.back());
        if (form == "pdf") picture::write_pdf(list, files.back());
        if (form == "png") picture::write_png(list, files.back());
    }
    return files;
}

}  // namespace overbend::commands
