#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"panel.no_such_panel", TEXT("Stayalight", "There is no such panel")},
    {"panel.no_such_space", TEXT("Stayalight", "%1 has no such space")},
    {"panel.no_such_shape",
     TEXT("Stayalight",
          "No breaker has this shape: a tandem half has one pole, the outer or inner pair of a quad two")},
    {"panel.below_last_row",
     TEXT("Stayalight", "A two-pole breaker at space %1 would reach below the last row of %2")},
    {"panel.taken", TEXT("Stayalight", "Already taken by %2, at %1")},
    {"panel.poles_on_one_leg",
     TEXT("Stayalight", "Spaces %1 both lie on %2; a two-pole breaker needs both legs")},
    {"panel.no_tandem", TEXT("Stayalight", "Space %1 does not accept a tandem breaker")},
    {"panel.too_many_poles", TEXT("Stayalight", "The label of %1 allows %2 poles; this would make %3")},
    {"panel.clearing.no_two_spaces",
     TEXT("Stayalight",
          "%1 has no two adjacent spaces on different legs where a breaker of two poles may stand")},
    {"panel.clearing.nothing_free",
     TEXT("Stayalight",
          "%1 is full: no two adjacent spaces of one column come free, not even by setting other breakers "
          "elsewhere. "
          "Move more circuits, or put two on a tandem where the panel takes them")},
    {"panel.clearing.out", TEXT("Stayalight", "Take out %1 at %2")},
    {"panel.clearing.out_dark",
     TEXT("Stayalight", "Take out %1 at %2: no supply from here until the backup subpanel is fed")},
    {"panel.clearing.lift",
     TEXT("Stayalight", "Take out %1 at %2 for a while: no supply until it is set again")},
    {"panel.clearing.set", TEXT("Stayalight", "Set %1 from %2 in %3")},
    {"panel.clearing.proposed", TEXT("Stayalight", "%1 (the plan leaves that breaker in place)")},
    {"panel.clearing.circuits", TEXT("Stayalight", "%1")},
    {"panel.clearing.stays", TEXT("Stayalight", "Something that the plan leaves in place stands at %1")},
    {"panel.by_circuit", TEXT("Stayalight", "%1")},
    {"panel.by_old_breaker", TEXT("Stayalight", "the old breaker of %1")},
    {"panel.by_spare", TEXT("Stayalight", "a spare breaker")},
    {"panel.by_feeder", TEXT("Stayalight", "a feeder breaker")},
    {"panel.by_bypass", TEXT("Stayalight", "the breaker of the bypass")},
    {"panel.by_inverter_input", TEXT("Stayalight", "the breaker of the inverter's input")},
    {"panel.by_inverter_output", TEXT("Stayalight", "the breaker of the inverter's output")},
    {"panel.by_solar", TEXT("Stayalight", "the solar breaker")},
    {"panel.by_generator", TEXT("Stayalight", "the generator breaker")},
    {"panel.by_utility", TEXT("Stayalight", "the breaker of the utility supply")},
    {"panel.feeds.nothing", TEXT("Stayalight", "Spare")},
    {"panel.feeds.feeder", TEXT("Stayalight", "Feeder")},
    {"panel.feeds.inverter_input", TEXT("Stayalight", "Inverter, input")},
    {"panel.feeds.inverter_output", TEXT("Stayalight", "Inverter, output")},
    {"panel.feeds.solar", TEXT("Stayalight", "Solar")},
    {"panel.feeds.generator", TEXT("Stayalight", "Generator")},
    {"panel.feeds.utility", TEXT("Stayalight", "Utility supply")},
    {"panel.feeds.surge_device", TEXT("Stayalight", "Surge protective device")},
    {"panel.by_surge_device", TEXT("Stayalight", "the breaker of the surge device")},
};

}  // namespace

const std::span<const TextRow> panel(kRows);

}  // namespace stayalight::texts_of
