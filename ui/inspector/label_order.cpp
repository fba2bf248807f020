#include "ui/inspector/label_order.h"

namespace stayalight {
namespace {

using Keys = std::string_view;

constexpr Keys kOutput[] = {"name", "units", "output_V", "continuous_W", "continuous_VA", "leg_W", "leg_A"};
constexpr Keys kInput[] = {"ac_input_A",           "pass_through_A",
                           "adds_to_pass_through", "maximum_output_device_A",
                           "transfer_gap_s",       "bond"};
constexpr Keys kBatterySide[] = {"lowest_input_V", "charge_limit_W"};
constexpr Keys kLosses[] = {"marginal_efficiency", "idle_W"};
constexpr Keys kListing[] = {"multimode", "power_control_listed", "control_setting_VA", "reconnects_by_hand"};
constexpr LabelGroup kInverter[] = {
    {MessageId{"inspector.group.output"}, kOutput, {}},
    {MessageId{"inspector.group.overload"}, {}, "overload"},
    {MessageId{"inspector.group.input"}, kInput, {}},
    {MessageId{"inspector.group.battery_side"}, kBatterySide, {}},
    {MessageId{"inspector.group.losses"}, kLosses, "efficiency"},
    {MessageId{"inspector.group.listing"}, kListing, {}},
};

constexpr Keys kEnergy[] = {"name", "packs", "nominal_kWh"};
constexpr Keys kCurrents[] = {"continuous_A", "peak_A", "peak_s"};
constexpr Keys kCold[] = {"charge_cut_off_mC", "place", "cell_temperature_mC"};
constexpr Keys kUsable[] = {"health", "reserve", "floor", "restart", "charge_efficiency"};
constexpr LabelGroup kBattery[] = {
    {MessageId{"inspector.group.energy"}, kEnergy, {}},
    {MessageId{"inspector.group.currents"}, kCurrents, {}},
    {MessageId{"inspector.group.cold"}, kCold, {}},
    {MessageId{"inspector.group.usable"}, kUsable, {}},
};

}  // namespace

std::span<const LabelGroup> labelGroups(RecordKind kind) {
  if (kind == RecordKind::inverter) return kInverter;
  if (kind == RecordKind::battery) return kBattery;
  return {};
}

}  // namespace stayalight
