// What `film` can be asked for, and what of it does not go together.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/film/timeline.h"
#include "scenes/commands/options.h"

namespace overbend::commands {

struct FilmCommand {
    std::string file;
    std::optional<std::string> out = "out/film";
    std::vector<std::string> formats;  // "mp4", "gif", "png"; none given: mp4, or none when there are stills
    std::string size = "1280x720";
    std::string theme = "light";
    std::string backdrop = "page";
    std::string colour = "stress";
    std::string lens = "on";
    std::string charts = "on";
    std::string cards = "on";
    std::string steps = "all";
    double springback_scale = 1.0;
    double frames_per_second = 30.0;
    double seconds_per_stroke = 8.0;
    double seconds_between = 6.0;
    double gif_limit = 20.0;  // MB, of 1000000 bytes
    std::vector<std::string> stills;
    std::vector<std::string> still_forms;
    int threads = 0;
    Output output;
};

void add_options(Command& command, FilmCommand& given);

// Throws WrongUsage: a size that is none, options that do not go together.
film::FilmOptions film_options(const FilmCommand& given);

// The formats that are to be written, each once.
std::vector<std::string> film_formats(const FilmCommand& given);
bool asked_for(const FilmCommand& given, const std::string& format);

}  // namespace overbend::commands
