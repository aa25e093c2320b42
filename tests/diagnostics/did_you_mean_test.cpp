#include "diagnostics/diagnostics.h"
#include "support/catch.h"

using namespace gownsheaf;

TEST_CASE("a slip of the fingers is offered its word") {
  const std::vector<std::string> choices = {"channel", "length", "number", "stock", "casing", "cut width", "hem", "at"};
  CHECK(did_you_mean("lenght", choices) == "length");  // neighbours swapped: one slip
  CHECK(did_you_mean("legnht", choices) == "length");  // two swaps
  CHECK(did_you_mean("chanel", choices) == "channel");
  CHECK(did_you_mean("Number", choices) == "number");  // capitals are no slip
  CHECK(did_you_mean("cut_width", choices) == "cut width");
  CHECK(did_you_mean("cutwidth", choices) == "cut width");
  CHECK(did_you_mean("hen", choices) == "hem");
}

TEST_CASE("what is far from every word is offered none") {
  const std::vector<std::string> choices = {"channel", "length", "number", "stock", "casing", "cut width", "hem", "at"};
  CHECK(did_you_mean("drawstring", choices).empty());
  CHECK(did_you_mean("hat pin", choices).empty());
  CHECK(did_you_mean("x", choices).empty());
  CHECK(did_you_mean("", choices).empty());
  CHECK(did_you_mean("length", {}).empty());
  CHECK(did_you_mean("tub", choices).empty());
  CHECK(did_you_mean(std::string(100'000, 'a'), choices).empty());
}

TEST_CASE("the nearest is offered, of equals the first") {
  CHECK(did_you_mean("widht", {"width", "weight"}) == "width");
  CHECK(did_you_mean("sead", {"seam", "seat"}) == "seam");
  CHECK(did_you_mean("sead", {"seat", "seam"}) == "seat");
  CHECK(did_you_mean("manteau", {"mànteau"}) == "mànteau");  // one letter, though two bytes
}
