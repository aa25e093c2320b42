// The list of packets as pages: one line each.
#pragma once
#include <variant>

#include "layout/lay_out.h"
#include "service/workroom.h"

namespace gownsheaf {

std::variant<std::string, FileFault> packet_list_pdf(const std::vector<PacketResult>& results, const FontSet& fonts, bool a4);
Sheet packet_list_sheet(const std::vector<PacketResult>& results, const FontSet& fonts);

}  // namespace gownsheaf
