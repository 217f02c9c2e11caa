// Writes a table as its description says: what is not as usual.

#pragma once

#include "scenes/files/case/fields.h"
#include "scenes/files/case/toml_text.h"

namespace overbend::files {

Entries fields_written(const Fields::Show& show);

template <class T>
Entries entries_of(T value) {
    return fields_written([&](Fields& f) { describe(f, value); });
}

}  // namespace overbend::files
