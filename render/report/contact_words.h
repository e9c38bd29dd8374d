#pragma once

#include <string>

#include "render/report/json_values.h"
#include "sim/clearance/contact_report.h"
#include "sim/trade/length.h"

namespace stowpath {

/// Where, when and how deep two parts may touch, and how deep they do as drawn: a sentence.
std::string contact_text(const Model& model, const MeantContact& contact, DisplayUnits units);

/// How many pairs may touch, and where they are listed: a sentence.
std::string contact_count_text(const Model& model);

/// The same list for a program.
Json contacts_json(const Model& model, DisplayUnits units);

}  // namespace stowpath
