// Facts of the wearer, of what the garment is worn for, of fittings and of what can hurt: a table that facts.cpp joins.
#pragma once
#include <map>
#include <string_view>
#include <vector>

#include "project/project.h"
#include "templates/condition.h"

namespace gownsheaf {

using SafetyFact = FactValue (*)(const Project&, std::string_view item);
const std::map<std::string_view, SafetyFact>& safety_facts();

}  // namespace gownsheaf
