// A bend table as pages of A4.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"
#include "scenes/job/bend_table/bend_table.h"

namespace overbend::documents {

std::vector<picture::DrawingList> bend_table_pages(const job::BendTableOrder& order,
                                                   const std::vector<job::BendTableRow>& rows);

}  // namespace overbend::documents
