// Reads the drawing of a case file: the table [part].

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/describe.h"

namespace overbend::files {

class StrictTable;

// given      what stands in the table
// thickness  of the strip, mm; legs measured on the outside are turned into flats by it
Part read_part(const StrictTable& table, const PartTable& given, double thickness);

// thickness, width  of the strip, mm
// blank_length      mm, if the file gives it; else the drawing's length along its mid-line is the limit
std::vector<Cutout> read_cutouts(const StrictTable& table, const PartTable& given, const Part& part,
                                 double thickness, double width, std::optional<double> blank_length);

// Where in the drawing's path a bend is, for what is found wrong with it later.
[[noreturn]] void complain_of_bend(const StrictTable& table, std::size_t bend, const std::string& wrong,
                                   const std::string& right);

}  // namespace overbend::files
