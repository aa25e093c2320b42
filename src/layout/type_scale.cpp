#include "layout/text.h"

namespace gownsheaf {

const TypeScale& pin_up_scale() {
  static const TypeScale scale{.name = "pin-up",
                               .step = 20,
                               .title = 28,
                               .title_step = 40,
                               .answer = 18,
                               .answer_step = 25,
                               .heading = 18,
                               .heading_step = 20,
                               .text = 14,
                               .length = 18,
                               .table_head = 14,
                               .table_head_step = 18,
                               .row_height = 25,
                               .smallest = 12,
                               .step_number = 20,
                               .tick_box = 19,
                               .tick_weight = 1.4,
                               .inline_box = 15,
                               .text_width = 400,
                               .row_rule = 0.7};
  return scale;
}

const TypeScale& binder_scale() {
  static const TypeScale scale{.name = "binder",
                               .step = 14,
                               .title = 20,
                               .title_step = 28,
                               .answer = 12,
                               .answer_step = 16,
                               .heading = 13,
                               .heading_step = 14,
                               .text = 10,
                               .length = 12,
                               .table_head = 10,
                               .table_head_step = 12,
                               .row_height = 19,
                               .smallest = 8.5,
                               .step_number = 13,
                               .tick_box = 11,
                               .tick_weight = 1.0,
                               .inline_box = 9,
                               .text_width = 286,
                               .row_rule = 0.5};
  return scale;
}

}  // namespace gownsheaf
