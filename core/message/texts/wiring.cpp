#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- why a device has its rating
    {"wiring.device.by_load",
     TEXT("Stayalight",
          "continuous load of %1 with its factor and other load of %2 ask for %3; next standard rating %4")},
    {"wiring.device.by_other_load", TEXT("Stayalight", "the load asks for %1; next standard rating %2")},
    {"wiring.device.fixed", TEXT("Stayalight", "entered as %1; the load asks for at least %2")},
    {"wiring.device.fixed_load_unknown",
     TEXT("Stayalight", "entered as %1; what the load asks for is not known")},
    {"wiring.device.load_unknown", TEXT("Stayalight", "the load is not known")},
    {"wiring.device.none_listed", TEXT("Stayalight", "no standard rating reaches %1")},
    {"wiring.device.follows",
     TEXT("Stayalight", "no device of its own: the larger one ahead of the switch, %1, protects it")},
    {"wiring.device.follows_unknown",
     TEXT("Stayalight", "no device of its own, and those ahead of the switch are not known")},
    // -- what limits a device
    {"wiring.maximum.label", TEXT("Stayalight", "greatest output device on the inverter's label")},
    {"wiring.maximum.bus", TEXT("Stayalight", "bus of %1")},
    {"wiring.maximum.switch", TEXT("Stayalight", "transfer switch")},
    {"wiring.maximum.input", TEXT("Stayalight", "input of the inverter")},
    {"wiring.maximum.relay", TEXT("Stayalight", "pass-through relay")},
    // -- why a conductor has its size
    {"wiring.conductor.terminal",
     TEXT("Stayalight", "%1 in the %2 column of its terminals carries %3, the load asks for %4")},
    {"wiring.conductor.nm_column",
     TEXT("Stayalight", "%1 as cable in the %2 column carries %3, the load asks for %4")},
    {"wiring.conductor.derated",
     TEXT("Stayalight", "%1 carries %2 after ambient and bundling, the load is %3")},
    {"wiring.conductor.device", TEXT("Stayalight", "%1 carries %2, which a device of %3 does not protect")},
    {"wiring.conductor.small", TEXT("Stayalight", "%1 is too small a conductor for a device of %2")},
    {"wiring.conductor.smallest", TEXT("Stayalight", "%1 is the smallest size listed")},
    {"wiring.conductor.fixed", TEXT("Stayalight", "%1 is there already and carries %2")},
    {"wiring.conductor.load_unknown", TEXT("Stayalight", "neither load nor device is known")},
    {"wiring.conductor.none_listed", TEXT("Stayalight", "no size of the table carries this load")},
    {"wiring.conductor.too_hot", TEXT("Stayalight", "the table permits this insulation no current at %1")},
    // -- neutral and ground
    {"wiring.neutral.full", TEXT("Stayalight", "%1, as large as the ungrounded conductors")},
    {"wiring.neutral.in_cable", TEXT("Stayalight", "%1, as all conductors of the cable")},
    {"wiring.neutral.leg_load", TEXT("Stayalight", "%1 for %2 between neutral and the heavier leg")},
    {"wiring.neutral.bounded",
     TEXT("Stayalight", "%1, as large as the ungrounded conductors, whose device bounds the %2 of one leg")},
    {"wiring.neutral.minimum", TEXT("Stayalight", "%1, not smaller than the grounding table asks for %2")},
    {"wiring.neutral.phasor", TEXT("Stayalight", "%1 for an operating neutral current of %2")},
    {"wiring.neutral.conductor_unknown", TEXT("Stayalight", "the ungrounded conductors are not known")},
    {"wiring.ground.table", TEXT("Stayalight", "%1 behind a device of %2")},
    {"wiring.ground.upsized",
     TEXT("Stayalight", "%1 by the table, larger as the conductors are (%2 would do, %3 is there): %4")},
    {"wiring.ground.as_conductor", TEXT("Stayalight", "%1, never larger than the ungrounded conductors")},
    {"wiring.ground.device_unknown", TEXT("Stayalight", "the device ahead is not known")},
    {"wiring.ground.not_listed", TEXT("Stayalight", "the table of this program ends below %1")},
    // -- what is over
    {"wiring.over.minimum_above_maximum", TEXT("Stayalight",
                                               "the load asks for a device of at least %1, and no standard "
                                               "rating from there stays within %2 (%3)")},
    {"wiring.over.device_below_minimum",
     TEXT("Stayalight", "the device of %1 is below the %2 that the load asks for")},
    {"wiring.over.device_above_maximum", TEXT("Stayalight", "the device of %1 is above %2 (%3)")},
    {"wiring.over.panel_main",
     TEXT("Stayalight", "the main breaker of the backup subpanel is below the %1 that the load asks for")},
    {"wiring.over.conductor_too_small", TEXT("Stayalight", "the conductor is too small: %1")},
    {"wiring.over.not_protected", TEXT("Stayalight", "a device of %2 does not protect %1")},
    {"wiring.over.neutral", TEXT("Stayalight", "the neutral is too small: it takes %1")},
    {"wiring.over.ground", TEXT("Stayalight", "the equipment grounding conductor is too small: it takes %1")},
    {"wiring.over.no_conductor", TEXT("Stayalight", "no conductor fits: %1")},
    {"wiring.over.no_rating", TEXT("Stayalight", "no standard rating reaches the %1 that the load asks for")},
    // -- what is missing
    {"wiring.missing.calculated_load", TEXT("Stayalight", "calculated load of the backup feeder")},
    {"wiring.missing.rated_output", TEXT("Stayalight", "rated output of the inverter")},
    {"wiring.missing.charge_limit", TEXT("Stayalight", "charge limit of the inverter")},
    {"wiring.missing.adds",
     TEXT("Stayalight", "whether the inverter adds its output to what passes through")},
    {"wiring.missing.run", TEXT("Stayalight", "the run itself: length, wiring, terminals")},
    {"wiring.missing.device", TEXT("Stayalight", "overcurrent device")},
    {"wiring.missing.conductor", TEXT("Stayalight", "conductor")},
    {"wiring.missing.label_maximum", TEXT("Stayalight", "greatest output device on the inverter's label")},
    {"wiring.missing.switch_rating", TEXT("Stayalight", "rating of the transfer switch")},
    {"wiring.missing.bus_rating", TEXT("Stayalight", "bus rating of the backup subpanel")},
    {"wiring.missing.input_rating", TEXT("Stayalight", "input rating of the inverter")},
    // -- raceways, boxes, splices
    {"wiring.circuit_number", TEXT("Stayalight", "Circuit %1")},
    {"wiring.raceway.circuit", TEXT("Stayalight", "%1")},
    {"wiring.raceway.segment", TEXT("Stayalight", "feeder, %1")},
    {"wiring.raceway.ground", TEXT("Stayalight", "equipment ground for all")},
    {"wiring.raceway.other", TEXT("Stayalight", "conductors outside this plan")},
    {"wiring.raceway.no_size", TEXT("Stayalight", "size of the wires of %1")},
    {"wiring.raceway.no_width", TEXT("Stayalight", "width of the cable of %1")},
    {"wiring.raceway.no_segment_size", TEXT("Stayalight", "size of the feeder's conductors")},
    {"wiring.raceway.no_other_area", TEXT("Stayalight", "area of the conductors outside this plan")},
    {"wiring.raceway.fill_note", TEXT("Stayalight", "%1 may be filled to %2")},
    {"wiring.box.conductors", TEXT("Stayalight", "conductors of %1 AWG")},
    {"wiring.box.grounds", TEXT("Stayalight", "%1 equipment grounds, largest %2 AWG")},
    {"wiring.box.clamps", TEXT("Stayalight", "cable clamps inside")},
    {"wiring.box.clamps_perhaps", TEXT("Stayalight", "cable clamps, as long as nobody has looked")},
    {"wiring.box.devices", TEXT("Stayalight", "devices, twice the largest conductor each")},
    {"wiring.box.no_volume", TEXT("Stayalight", "volume marked in the box")},
    {"wiring.box.note", TEXT("Stayalight", "box %1")},
};

}  // namespace

const std::span<const TextRow> wiring(kRows);

}  // namespace stayalight::texts_of
