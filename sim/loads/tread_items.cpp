#include "sim/loads/connection.h"
#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/loads/stair_items.h"

namespace stowpath {

void add_tread_fixing(StairItems& to, double force) {
  const auto& treads = to.scene().stair.treads;
  if (!treads) return;
  const std::string name = "tread's fixing at each end";
  if (!treads->screws) {
    to.add(name, LoadKind::force, force).note =
        "nothing says how treads are fixed: stair.treads.screws, or a housing with a rating of its own";
    return;
  }
  const Screws& screws = *treads->screws;
  const Species& wood = wood_of(screws, to.inputs.climber);
  const double grain = treads->cleats ? 1.0 : kEndGrainShear;
  HardwareItem& item = to.add(name, LoadKind::force, force);
  item.resistance =
      screws.count * grain * screw_shear_in_wood(screws, wood.gravity, to.scene().stair.side_rails.thickness);
  item.basis = "dowel equations of the NDS, " + say_screws(to.scene(), screws, wood) +
               (treads->cleats ? ", in the cleats' side grain" : ", in the tread's end grain: C_eg 0.67");
  item.reserve = kDowelReserve;
  item.status = SourceStatus::memory;
  item.note = "the foot at that end; " + setting_rule(to.scene(), screws);
}

}  // namespace stowpath
