// What no search can honour, whatever the outlines.
#pragma once
#include <string>

#include "nest/nest.h"

namespace gownsheaf::nest {

// The first field that cannot be honoured, in words; "" when there is none.
std::string unsupported_request(const Request& request);

}  // namespace gownsheaf::nest
