// Reads a table as its description says.
//
// Only the readers in scenes/files/case include this; nobody else needs to know TOML.

#pragma once

#include "scenes/files/case/fields.h"
#include "scenes/files/case/strict_table.h"

namespace overbend::files {

// keys: that may stand in it. Throws CaseError for any other, one that is missing, or a value that cannot be.
void read_fields(StrictTable table, const Keys& keys, const Fields::Show& show);

template <class T>
void read_into(const StrictTable& table, T& value) {
    read_fields(table, keys_of<T>(), [&](Fields& f) { describe(f, value); });
}
template <class T>
T read_as(const StrictTable& table) {
    T value = fresh<T>();
    read_into(table, value);
    return value;
}

}  // namespace overbend::files
