#include "figures/formula_sources.h"

namespace gownsheaf {
namespace {

struct Row {
  std::string_view formula, source;
};

constexpr Row kRows[] = {
    {"all-round", kArithmetic},
    {"band-hold", "waistband-pressure"},
    {"best-buy", kArithmetic},
    {"between-sizes", "astm-d5585"},
    {"bias-strip", kArithmetic},
    {"bones", "baldt-1916-bones"},
    {"breadth-seams", "ingalls-kilted"},
    {"breadths", "curtain-widths"},
    {"burn-class", "cfr-1610"},
    {"bust-over-underbust", kArithmetic},
    {"buttonhole", "buttons"},
    {"closing-cut", "baldt"},
    {"closures", "the-new-dressmaker"},
    {"cloth-weight", kArithmetic},
    {"copies", kArithmetic},
    {"cut-length", kArithmetic},
    {"cut-width", kArithmetic},
    {"cutting-stock", "gilmore-gomory"},
    {"density", kArithmetic},
    {"edge-lengths", kArithmetic},
    {"fasteners-compared", kCommonPractice},
    {"finished-girth", kArithmetic},
    {"fitting-change", kArithmetic},
    {"gauging", "waist-thickness"},
    {"half-width", kArithmetic},
    {"hem-braid", kCommonPractice},
    {"hook-load", "dickinson-1910"},
    {"joined-layer", kArithmetic},
    {"joined-round", kArithmetic},
    {"lacing", "lacing"},
    {"lay", kArithmetic},
    {"lay-bound", kArithmetic},
    {"left-over", kArithmetic},
    {"length-to-buy", kArithmetic},
    {"load-eased", kCommonPractice},
    {"load-range", kCommonPractice},
    {"pieced-panels", kArithmetic},
    {"plackets", "the-new-dressmaker"},
    {"pleat-choices", kArithmetic},
    {"pleat-ends", kArithmetic},
    {"pleat-map", kCommonPractice},
    {"pleat-marks", kArithmetic},
    {"pleats", "nimi-203"},
    {"repeats", "drapery-repeat"},
    {"round-sum", kArithmetic},
    {"size-difference", kArithmetic},
    {"size-girth", "butterick-size"},
    {"skirt-length", kCommonPractice},
    {"spare-and-short", kArithmetic},
    {"stays", kCommonPractice},
    {"step-times", kCommonPractice},
    {"stitched-down", kArithmetic},
    {"strips", kCommonPractice},
    {"thicker-layers", kArithmetic},
    {"tiers", "petticoat-1907"},
    {"ties", kCommonPractice},
    {"underbust-band", "en-13402-3"},
    {"uneven-pleats", "conover-skirts"},
    {"usable-width", kArithmetic},
    {"waist-thickness", "waist-thickness"},
    {"width-chart", "width-chart"},
};

}  // namespace

std::string_view source_of_formula(std::string_view formula) {
  for (const Row& row : kRows)
    if (row.formula == formula) return row.source;
  return "";
}

}  // namespace gownsheaf
