#include "scenes/files/case/describe.h"

namespace overbend::files {

void describe(Fields& f, Tool& t) {
    f.text({"name", "\"punch 60\"", "Name, used in steps; unique, also in the rack"}, t.name);
    f.one_of({"kind", "\"vee-punch\"", "Kind of tool"}, kind_list(), t.shape,
             [](Fields& shown, ToolShape& shape) { kind_of(shape).describe(shown, shape); });
    describe(f, t.make);
}

void describe(Fields& f, ToolMake& t) {
    f.text_or({"steel", "\"1.2379\"", "Its steel: the name of a card, or a .toml file"}, t.steel, "",
              "not known");
    f.number_if({"rating_kN_per_m", "800.0", "Rated load, stated by its maker"}, above_to(0.0, 1e5),
                t.rating);
    f.number_if({"length_mm", "50.0", "Length along the bend line"}, above_to(0.0, 5000.0), t.length,
                "the strip's width plus 20 mm");
    f.number_if({"price", "180.0", "Price of a tool that is bought"}, from_to(0.0, 1e9), t.price,
                "none: it is made");
}

}  // namespace overbend::files
