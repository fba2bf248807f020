#include <algorithm>
#include <nlohmann/json.hpp>
#include <string_view>

#include "core/report/report.h"

namespace stayalight {
namespace {

using Json = nlohmann::ordered_json;

/// An assessment in which each list has an item and each optional figure is there: the report of it has every
/// key.
Assessment specimen() {
  Assessment full;
  full.limits.total = Watts{};
  full.limits.totalApparent = VoltAmperes{};
  full.limits.leg = AcAmperes{};
  full.limits.curve.emplace_back();
  MotorStart motor;
  full.starts.motors.push_back(motor);
  StartCheck check;
  check.loads.emplace_back();
  check.leg[0].emplace();
  check.leg[1].emplace();
  check.battery.emplace();
  full.starts.checks.push_back(check);
  full.starts.worstPair = check;
  full.starts.allAtOnce = check;
  SegmentFigures segment;
  segment.conductor.ambientFactor = segment.conductor.adjustmentFactor = Fraction{};
  segment.device.next = RatingAmperes{};
  segment.drop.emplace();
  segment.over.emplace_back();
  segment.notKnown.emplace_back();
  full.segments.push_back(segment);
  full.dcCable.emplace();
  full.dcCable->conductor.ambientFactor = segment.conductor.ambientFactor;
  full.dcCable->over.emplace_back();
  full.dcCable->notKnown.emplace_back();
  BuildingFigures& building = full.buildings.emplace_back();
  building.pieces.emplace_back();
  building.supply = building.electrodeConductor = ConductorSize::awg4;
  building.mainBreaker = RatingAmperes{};
  building.drop = 0.0;
  BusFigures bus;
  bus.sources.emplace_back();
  full.buses.push_back(bus);
  RacewayFigures raceway;
  raceway.contents.emplace_back();
  raceway.branches.emplace_back();
  raceway.notKnown.emplace_back();
  full.raceways.push_back(raceway);
  SpliceBoxFigures box;
  box.lines.emplace_back();
  box.notKnown.emplace_back();
  full.boxes.push_back(box);
  WiringSpaceFigures& gutter = full.wiringSpaces.emplace_back();
  gutter.space = gutter.allowed = gutter.withSplices = SquareInches(1.0);
  gutter.notKnown.emplace_back();
  gutter.contents.emplace_back();
  ClearedPlace& place = full.supplyPlaces.emplace_back();
  place.breaker = BreakerId{1};
  place.steps.emplace_back().dark.emplace_back();
  DemandCalculation calculation;
  calculation.lines.emplace_back().factor = Fraction{};
  calculation.missing.emplace_back();
  calculation.notes.emplace_back();
  full.demand.covered = true;
  full.demand.feeder = calculation;
  MethodFigures method;
  method.before = calculation;
  method.after = calculation;
  full.demand.service.methods.push_back(method);
  PathFigures path;
  path.conditions.emplace_back();
  full.demand.paths.push_back(path);
  full.outage.known = true;
  full.outage.missing.emplace_back();
  full.outage.energy.capacityNow.emplace();
  full.outage.energy.usable.emplace();
  for (OutageRun* run : {&full.outage.low, &full.outage.likely, &full.outage.high})
    run->points.emplace_back();
  full.panels.emplace_back();
  full.breakers.emplace_back();
  full.onSite.emplace_back();
  Finding finding;
  finding.places.emplace_back();
  full.findings.push_back(finding);
  const WorkingOf about(&full.working, {});
  Step step;
  step.inputs.emplace_back();
  full.working.add(step);
  return full;
}

/// The shape of a value. Figures, texts and parts that are not known are null.
Json shapeOf(const Json& value, const std::string& key) {
  if (value.is_object()) {
    Json properties = Json::object();
    Json required = Json::array();
    for (const auto& [name, inner] : value.items()) {
      properties[name] = shapeOf(inner, name);
      required.push_back(name);
    }
    return Json{
        {"type", Json::array({"object", "null"})}, {"required", required}, {"properties", properties}};
  }
  if (value.is_array())
    return Json{{"type", "array"}, {"items", value.empty() ? Json::object() : shapeOf(value.front(), "")}};
  if (value.is_boolean()) return Json{{"type", "boolean"}};
  if (value.is_string()) {
    if (key.starts_with("verdict")) return Json{{"enum", Json::array({"within", "over", "not_known"})}};
    if (key == "severity")
      return Json{{"enum", Json::array({"danger", "must_fix", "check_on_site", "advice"})}};
    if (key == "who") return Json{{"enum", Json::array({"household", "qualified_person"})}};
    return Json{{"type", "string"}};
  }
  // Null in the specimen: a figure where the key ends in a unit or counts, else a text.
  static constexpr std::string_view kUnits[] = {"_A", "_W", "_VA",  "_var", "_V", "_Wh", "_kWh",
                                                "_h", "_s", "_in2", "_in3", "_C", "_ft", "_fraction"};
  const bool figure = value.is_number() || key.starts_with("odds") || key.starts_with("times") ||
                      key == "panel" || key == "step" ||
                      std::any_of(std::begin(kUnits), std::end(kUnits),
                                  [&](std::string_view unit) { return key.ends_with(unit); });
  return Json{{"type", Json::array({figure ? "number" : "string", "null"})}};
}

}  // namespace

std::string reportSchema() {
  Plan plan;
  plan.panels.emplace_back().edit().neutralTerminals = 1;
  const Json report = Json::parse(reportJson(plan, specimen(), "", plainEnglish()));
  Json schema{
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"title", "Stayalight assessment, format 1"},
      {"description",
       "Keys end in their unit (_A, _W, _VA, _var, _V, _Wh, _h, _s). What is not known is null. Figures are "
       "rounded once: A and h to 2 decimals, W, VA and Wh to 1, shares and chances to 4. Low, likely and "
       "high are the 10th, 50th and 90th percentile in day and outage; in hour and starts, which limits are "
       "held against, they take the unfavourable end of each fact. All figures are estimates for planning."}};
  const Json shape = shapeOf(report, "");
  for (const auto& [key, value] : shape.items()) schema[key] = value;
  schema["type"] = "object";
  return schema.dump(2) + "\n";
}

}  // namespace stayalight
