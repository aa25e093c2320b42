// The words of the project file for each closed choice.
#include "project/project.h"

namespace gownsheaf {

std::string_view word_for(Garment g) {
  switch (g) {
    case Garment::dress: return "dress";
    case Garment::bodice: return "bodice";
    case Garment::skirt: return "skirt";
    case Garment::petticoat: return "petticoat";
    case Garment::corset: return "corset";
    case Garment::spencer: return "spencer";
    case Garment::coat: return "coat";
    case Garment::waistcoat: return "waistcoat";
    case Garment::other: return "other";
  }
  return "";
}

std::string_view word_for(UsedAs u) {
  switch (u) {
    case UsedAs::outer: return "outer";
    case UsedAs::lining: return "lining";
    case UsedAs::interlining: return "interlining";
    case UsedAs::facing: return "facing";
    case UsedAs::trimming: return "trimming";
    case UsedAs::strengthening: return "strengthening";
    case UsedAs::mock_up: return "mock-up";
  }
  return "";
}

std::string_view word_for(LayRule r) {
  switch (r) {
    case LayRule::either_way: return "either way";
    case LayRule::one_way: return "one way";
    case LayRule::bias: return "bias";
    case LayRule::any_way: return "any way";
  }
  return "";
}

std::string_view word_for(ClothFold f) {
  switch (f) {
    case ClothFold::none: return "none";
    case ClothFold::lengthwise: return "lengthwise";
    case ClothFold::crosswise: return "crosswise";
  }
  return "";
}

std::string_view word_for(PartOf p) {
  switch (p) {
    case PartOf::bodice: return "bodice";
    case PartOf::skirt: return "skirt";
    case PartOf::sleeve: return "sleeve";
    case PartOf::leg: return "leg";
    case PartOf::collar: return "collar";
    case PartOf::band: return "band";
    case PartOf::facing: return "facing";
    case PartOf::pocket: return "pocket";
    case PartOf::drapery: return "drapery";
    case PartOf::petticoat: return "petticoat";
    case PartOf::corset: return "corset";
    case PartOf::trimming: return "trimming";
  }
  return "";
}

std::string_view word_for(Grain g) {
  switch (g) {
    case Grain::along: return "along";
    case Grain::across: return "across";
    case Grain::bias: return "bias";
  }
  return "";
}

std::string_view word_for(PleatKind k) {
  switch (k) {
    case PleatKind::knife: return "knife";
    case PleatKind::box: return "box";
    case PleatKind::inverted: return "inverted";
    case PleatKind::double_box: return "double box";
    case PleatKind::cartridge: return "cartridge";
    case PleatKind::gathers: return "gathers";
    case PleatKind::tucks: return "tucks";
    case PleatKind::plain: return "plain";
    case PleatKind::inverted_at_seams: return "inverted at seams";
  }
  return "";
}

std::string_view word_for(Toward t) {
  switch (t) {
    case Toward::centre_back: return "centre back";
    case Toward::centre_front: return "centre front";
    case Toward::left: return "left";
    case Toward::right: return "right";
  }
  return "";
}

}  // namespace gownsheaf
