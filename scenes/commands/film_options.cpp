#include "scenes/commands/film_options.h"

#include <algorithm>

#include "sim/errors.h"

namespace overbend::commands {

namespace {

// "1920x1080".
picture::PictureSize read_size(const std::string& words) {
    const std::size_t cross = words.find('x');
    const auto digits = [](const std::string& text) {
        return !text.empty() && text.size() <= 5 && text.find_first_not_of("0123456789") == std::string::npos;
    };
    const std::string width = words.substr(0, cross);
    const std::string height = cross == std::string::npos ? "" : words.substr(cross + 1);
    if (!digits(width) || !digits(height))
        complain("--size", "\"" + words + "\" is not a size; give WIDTHxHEIGHT in pixels, such as 1920x1080");
    const picture::PictureSize size{std::stoi(width), std::stoi(height)};
    try {
        picture::check_size(size);
    } catch (const OutOfRange& error) {
        complain("--size", error.what());
    }
    return size;
}

void check_together(const FilmCommand& given, const picture::PictureSize& size) {
    const auto even = [](int n) { return std::to_string(n - n % 2); };
    if (asked_for(given, "mp4") && (size.width % 2 != 0 || size.height % 2 != 0))
        complain("--size", given.size + " cannot be an MP4, whose width and height are even; give " +
                               even(size.width) + "x" + even(size.height) + ", or --formats gif or png");
    for (const char* opaque : {"mp4", "gif"})
        if (given.backdrop == "transparent" && asked_for(given, opaque))
            complain("--backdrop",
                     std::string("a film as ") + opaque +
                         " has no transparency; give --formats png, or stills alone with --still");
    if (!given.still_forms.empty() && given.stills.empty())
        complain("--still-as", "no still is asked for; choose its time with --still");
}

std::vector<std::string> each_once(const std::vector<std::string>& words) {
    std::vector<std::string> once;
    for (const std::string& word : words)
        if (std::find(once.begin(), once.end(), word) == once.end()) once.push_back(word);
    return once;
}

void add_what(Command& command, FilmCommand& given) {
    command.option("case", given.file, "The case file").required();
    command.option("--out", given.out, "Folder for what is written").shows_default();
    command
        .option("--formats", given.formats,
                "mp4 (film.mp4), gif (film.gif), png (one folder of frames for the job and one for each "
                "stroke), separated by commas. Default: mp4, or only stills with --still")
        .with_commas()
        .check(one_of({"mp4", "gif", "png"}));
    command.option("--steps", given.steps, "Steps to show: all, or names or numbers such as 1,3 or 2-4")
        .shows_default();
    command
        .option("--still", given.stills,
                "One still: STEP:PHASE, with placed, approach, press, dwell, retract or free, such as "
                "1:free; title or finished; or seconds from the start of the film. May be repeated")
        .repeated();
    command.option("--still-as", given.still_forms, "svg, pdf, png, separated by commas; default: all three")
        .with_commas()
        .check(one_of({"svg", "pdf", "png"}));
    command.option("--gif-limit", given.gif_limit,
                   "Size limit of the GIF in MB: frame rate and width are reduced to stay within it",
                   from_to(0.05, 2000.0, "MB"));
}

void add_look(Command& command, FilmCommand& given) {
    const ValueCheck on_or_off = one_of({"on", "off"});
    command.option("--size", given.size, "Picture size in pixels, WIDTHxHEIGHT, up to 3840x2160")
        .shows_default();
    command.option("--theme", given.theme, "light for paper, dark for a dark room",
                   one_of({"light", "dark"}));
    command.option("--backdrop", given.backdrop, "page, or transparent (PNG frames and stills)",
                   one_of({"page", "transparent"}));
    command.option("--colour", given.colour, "Colours of the layers: hoop stress or plastic strain",
                   one_of({"stress", "strain"}));
    command.option("--lens", given.lens, "Magnifier over the bend: on or off", on_or_off);
    command.option("--charts", given.charts, "Figures and force curve: on or off", on_or_off);
    command.option("--cards", given.cards, "Title card and end card: on or off", on_or_off);
    command.option("--springback-scale", given.springback_scale,
                   "Factor by which the springback is enlarged; the picture states it",
                   from_to(1.0, 20.0, ""));
}

void add_time(Command& command, FilmCommand& given) {
    command.option("--rate", given.frames_per_second, "Frames per second", from_to(1.0, 120.0, ""));
    command.option("--seconds", given.seconds_per_stroke, "Seconds per stroke", from_to(1.0, 120.0, "s"));
    command.option("--between", given.seconds_between,
                   "Seconds between two strokes with a tool change; two thirds of it without a tool change",
                   from_to(0.1, 60.0, "s"));
    command.option("--threads", given.threads, "Threads; 0: one per core", whole_from_to(0, 256));
}

}  // namespace

void add_options(Command& command, FilmCommand& given) {
    add_what(command, given);
    add_look(command, given);
    add_time(command, given);
    add_quiet(command, given.output);
}

film::FilmOptions film_options(const FilmCommand& given) {
    film::FilmOptions how;
    how.size = read_size(given.size);
    check_together(given, how.size);
    how.theme = given.theme == "dark" ? picture::Theme::dark : picture::Theme::light;
    how.backdrop = given.backdrop == "transparent" ? picture::Backdrop::transparent : picture::Backdrop::page;
    how.colouring =
        given.colour == "strain" ? picture::Colouring::plastic_strain : picture::Colouring::hoop_stress;
    how.lens = given.lens == "on" ? picture::Lens::shown : picture::Lens::hidden;
    how.charts = given.charts == "on" ? picture::Charts::shown : picture::Charts::hidden;
    how.cards = given.cards == "on" ? film::Cards::shown : film::Cards::hidden;
    how.springback_scale = given.springback_scale;
    how.frames_per_second = given.frames_per_second;
    how.seconds_per_stroke = given.seconds_per_stroke;
    how.seconds_between = given.seconds_between;
    return how;
}

std::vector<std::string> film_formats(const FilmCommand& given) {
    if (given.formats.empty())
        return given.stills.empty() ? std::vector<std::string>{"mp4"} : std::vector<std::string>{};
    return each_once(given.formats);
}

bool asked_for(const FilmCommand& given, const std::string& format) {
    const std::vector<std::string> formats = film_formats(given);
    return std::find(formats.begin(), formats.end(), format) != formats.end();
}

}  // namespace overbend::commands
