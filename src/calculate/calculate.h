// The checked project to figures and plans. Pure: no files, no clock, no logging, no globals.
#pragma once
#include "calculate/lay_watch.h"
#include "figures/changes.h"
#include "figures/figures.h"
#include "figures/plans.h"
#include "nest/lay_store.h"
#include "project/project.h"
#include "templates/templates.h"

namespace gownsheaf {

struct Worked {
  Figures figures;
  Plans plans;
  std::optional<Changes> changes;  // against WorkOptions::since
};

struct WorkOptions {
  std::int64_t lay_work = 8000;                  // steps of search for each lay of rectangles; 0: one shelf lay
  std::int64_t outline_work = nest::kUsualWork;  // … of a lay that holds an outline; 0: outlines lie as their boxes
  int threads = 1;                               // the time taken, never an output
  const LayWatch* watch = nullptr;
  bool search_all = true;           // false (`check`): rectangles only where a shelf lay finds something wrong, outlines never
  nest::LayStore* store = nullptr;  // of lays kept from earlier, or nothing; no output tells which
  const OlderFigures* since = nullptr;  // what today is compared with, or nothing
};

// Runs every calculator whose section is there and clean, in the order of the sheets; then the facts, the order of work
// and "may I cut now". Holds and warnings go to diag, errors only for impossible arithmetic.
Worked calculate(const Project& project, const Templates& templates, const WorkOptions& options, Diagnostics& diag);

}  // namespace gownsheaf
