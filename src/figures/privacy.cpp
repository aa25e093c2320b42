#include "figures/privacy.h"

#include <algorithm>
#include <set>

namespace gownsheaf {
namespace {

constexpr std::string_view kPrivateSections[] = {"measures", "ease", "finished girths", "wearer", "people", "fittings", "strain"};

bool rests_on_private(const Figure& figure, const Figures& figures, std::set<std::string_view>& seen) {
  if (figure.is_private) return true;
  if (!seen.insert(figure.key).second) return false;
  return std::any_of(figure.inputs.begin(), figure.inputs.end(), [&](const std::string& input) {
    const Figure* from = figures.find(input);
    return from == nullptr ? is_private_name(input) : rests_on_private(*from, figures, seen);
  });
}

}  // namespace

bool is_private_name(std::string_view input) {
  const std::string_view section = input.substr(0, input.find('/'));
  if (std::find(std::begin(kPrivateSections), std::end(kPrivateSections), section) != std::end(kPrivateSections)) return true;
  const auto last = input.rfind('/');
  return last != std::string_view::npos && input.substr(last + 1) == "price";
}

bool sum_is_private(const Figure& figure, const Figures& figures) {
  std::set<std::string_view> seen;
  return rests_on_private(figure, figures, seen);
}

}  // namespace gownsheaf
