#include "render/picture/fonts.h"

#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

#include <array>
#include <cstdlib>
#include <memory>
#include <stdexcept>
#include <vector>

namespace overbend::picture {

namespace {

namespace fs = std::filesystem;

constexpr std::array<const char*, 2> files = {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"};

bool has_fonts(const fs::path& folder) {
    std::error_code none;  // what cannot be read is taken as not there
    for (const char* file : files)
        if (!fs::is_regular_file(folder / file, none)) return false;
    return true;
}

// A configuration with only these fonts and no rules. It is shared by all threads and kept to
// the program's end, since they may lay out words to the last.
FcConfig* own_fonts() {
    FcConfig* config = FcConfigCreate();
    if (!config) throw std::runtime_error("the pictures' fonts cannot be loaded: no memory");
    const fs::path folder = fonts_folder();
    for (const char* file : files)
        if (!FcConfigAppFontAddFile(config, reinterpret_cast<const FcChar8*>((folder / file).c_str())))
            throw std::runtime_error("the pictures' font cannot be read: " + (folder / file).string());
    return config;
}

struct ReleaseFonts {
    void operator()(cairo_font_options_t* o) const { cairo_font_options_destroy(o); }
    void operator()(gpointer object) const { g_object_unref(object); }
};

PangoContext* new_context() {
    static FcConfig* const config = own_fonts();
    const std::unique_ptr<PangoFontMap, ReleaseFonts> map(
        pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
    if (!map)
        throw std::runtime_error("the pictures' fonts cannot be loaded: Cairo was built without FreeType");
    pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map.get()), config);
    PangoContext* context = pango_font_map_create_context(map.get());
    const std::unique_ptr<cairo_font_options_t, ReleaseFonts> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options.get());
    pango_cairo_context_set_resolution(context, 72.0);
    // Letters stand where the font has them, not at whole hundredths of the size.
    pango_context_set_round_glyph_positions(context, FALSE);
    // The words' language has a say in shaping: not that of the machine.
    pango_context_set_language(context, pango_language_from_string("en"));
    return context;
}

}  // namespace

fs::path fonts_folder() {
    std::vector<fs::path> places;
    if (const char* named = std::getenv("OVERBEND_ASSETS"); named && *named)
        places.push_back(fs::path(named) / "fonts");
    std::error_code none;
    const fs::path beside = fs::read_symlink("/proc/self/exe", none).parent_path();
    places.push_back(beside / "../../assets/fonts");
    places.push_back(beside / "../share/overbend/fonts");
    places.push_back(OVERBEND_SOURCE_DIR "/assets/fonts");
    for (const fs::path& place : places)
        if (has_fonts(place)) return place.lexically_normal();
    throw std::runtime_error("the pictures' fonts (DejaVuSans.ttf, DejaVuSans-Bold.ttf) are not in " +
                             places.front().lexically_normal().string() +
                             "; let the environment variable OVERBEND_ASSETS name the folder of assets");
}

PangoContext* font_context() {
    thread_local const std::unique_ptr<PangoContext, ReleaseFonts> context(new_context());
    return context.get();
}

}  // namespace overbend::picture
