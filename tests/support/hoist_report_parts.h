#pragma once

#include "render/report/hoist_report.h"
#include "render/report/loads_report.h"

namespace stowpath::testing {

/// A scene pulled up and loaded, kept together for the reports, which only refer to their parts.
struct HoistParts {
  explicit HoistParts(Scene its_scene);

  Scene scene;
  Model model;
  PullReport pull;
  HoistEffort effort;
  Holding holding;
  Weights weights;
  std::vector<HardwareItem> hardware;
  LoadsReport loads;

  HoistSubject hoist(DisplayUnits units = DisplayUnits::metric) const;
  LoadsSubject loaded(DisplayUnits units = DisplayUnits::metric) const;
};

}  // namespace stowpath::testing
