#include "core/report/report.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/message/version.h"
#include "core/plan/field.h"
#include "core/wiring/neutral_terminals.h"

namespace stayalight {
namespace {

using Json = nlohmann::ordered_json;

// The one place where figures are rounded: A to 2 decimals, W, VA and Wh to 1, h to 2, shares and chances
// to 4.
constexpr int kAmpereDecimals = 2;
constexpr int kWattDecimals = 1;
constexpr int kHourDecimals = 2;
constexpr int kShareDecimals = 4;
constexpr int kSecondDecimals = 3;
constexpr int kVoltDecimals = 2;
constexpr int kAreaDecimals = 4;
constexpr int kWorkedDecimals = 6;  // of a step, enough to work it out again

constexpr std::array<std::string_view, 3> kSpaceParts = {"spliced", "staying", "supply"};
constexpr std::array<std::string_view, 5> kContentRoles = {"hot", "neutral", "ground", "cable", "other"};
constexpr std::array<std::string_view, 3> kClearings = {"taken_out", "taken_out_for_a_while",
                                                        "set_elsewhere"};
constexpr std::array<std::string_view, 7> kProtections = {"holds",
                                                          "label_allows",
                                                          "read_label",
                                                          "several_receptacles",
                                                          "receptacles_not_known",
                                                          "load_above_ampacity",
                                                          "over"};

Json rounded(double value, int decimals) {
  if (!std::isfinite(value)) return nullptr;
  const double scale = std::pow(10.0, decimals);
  const double out = std::round(value * scale) / scale;
  return out == 0.0 ? 0.0 : out;  // no -0.0
}

Json num(AcAmperes q) { return rounded(q.count(), kAmpereDecimals); }
Json num(DcAmperes q) { return rounded(q.count(), kAmpereDecimals); }
Json num(Watts q) { return rounded(q.count(), kWattDecimals); }
Json num(Vars q) { return rounded(q.count(), kWattDecimals); }
Json num(VoltAmperes q) { return rounded(q.count(), kWattDecimals); }
Json num(BatteryWattHours q) { return rounded(q.count(), kWattDecimals); }
Json num(LoadWattHours q) { return rounded(q.count(), kWattDecimals); }
Json num(Fraction q) { return rounded(q.count(), kShareDecimals); }
Json num(Hours q) { return rounded(q.count(), kHourDecimals); }
Json num(Seconds q) { return rounded(q.count(), kSecondDecimals); }
Json num(AcVolts q) { return rounded(q.count(), kVoltDecimals); }
Json num(SquareInches q) { return rounded(q.count(), kAreaDecimals); }
Json num(CubicInches q) { return rounded(q.count(), kAreaDecimals); }
Json num(RatingAmperes q) { return q.count(); }
Json num(double share) { return rounded(share, kShareDecimals); }
template <class T>
Json num(const std::optional<T>& value) {
  return value ? num(*value) : Json(nullptr);
}
template <class T>
Json num(const Range<T>& range) {
  return Json{{"low", num(range.low)}, {"likely", num(range.likely)}, {"high", num(range.high)}};
}
template <class T>
Json num(const std::optional<Range<T>>& range) {
  return range ? num(*range) : Json(nullptr);
}

template <class E, std::size_t N>
std::string word(E value, const std::array<std::string_view, N>& words) {
  return std::string(words[static_cast<std::size_t>(value)]);
}
/// The same where the words stand here: one for each value up to `kLast`.
template <auto kLast, std::size_t N>
std::string wordOf(decltype(kLast) value, const std::array<std::string_view, N>& words) {
  static_assert(N == static_cast<std::size_t>(kLast) + 1, "a word for each value");
  return word(value, words);
}
std::string word(Verdict v) {
  return wordOf<Verdict::notKnown>(v, std::array<std::string_view, 3>{"within", "over", "not_known"});
}
std::string word(Severity s) {
  return wordOf<Severity::advice>(
      s, std::array<std::string_view, 4>{"danger", "must_fix", "check_on_site", "advice"});
}
std::string word(Doer d) {
  return wordOf<Doer::qualifiedPerson>(d, std::array<std::string_view, 2>{"household", "qualified_person"});
}
std::string word(Basis b) {
  return wordOf<Basis::local>(
      b, std::array<std::string_view, 4>{"code", "listed_instruction", "practice", "local"});
}
std::string word(StartSource s) {
  return wordOf<StartSource::notKnown>(
      s, std::array<std::string_view, 6>{"nameplate", "code_letter", "horsepower_table", "start_class",
                                         "running", "not_known"});
}
std::string word(OutageEnd e) {
  return wordOf<OutageEnd::notKnown>(
      e, std::array<std::string_view, 6>{"floor_reached", "leg_overload", "total_overload", "battery_current",
                                         "beyond_horizon", "not_known"});
}
std::string word(DemandMethod m) { return word(m, kDemandMethodWords); }
std::string word(CapacityPath p) { return word(p, ChoiceWords<CapacityPath>::words); }
std::string word(Condition c) {
  return wordOf<Condition::notKnown>(c, std::array<std::string_view, 3>{"kept", "broken", "not_known"});
}
std::string word(Segment s) { return word(s, ChoiceWords<Segment>::words); }
std::string word(StartKind s) { return word(s, ChoiceWords<StartKind>::words); }
std::string word(TimeOfDay time) { return plainEnglish().clock(ClockTime{time.minutes()}); }
Json word(const std::optional<ConductorSize>& size) {
  return size ? Json(std::string(name(*size))) : Json(nullptr);
}

/// Writes one assessment; the language renders its messages.
class Report {
 public:
  Report(const Plan& plan, const Assessment& assessment, const Language& language)
      : plan_(plan), assessment_(assessment), language_(language) {}

  Json whole(const std::string& name) const {
    Json json;
    json["stayalight_assessment"] = Json{{"format", 1}, {"program", std::string(kVersion)}};
    json["plan"] = Json{{"file", name},
                        {"site", plan_.site->name},
                        {"code_edition", std::string(plan_.site->edition.word())}};
    json["scenario"] = Json{{"month", plan_.scenario->month},
                            {"start", word(plan_.scenario->start)},
                            {"start_charge", num(plan_.scenario->startCharge.count())}};
    json["has_backup_subpanel"] = assessment_.hasBackup;
    json["system"] = Json{{"leg_to_neutral_V", num(assessment_.system.legToNeutral)},
                          {"leg_to_leg_V", num(assessment_.system.legToLeg)}};
    json["inverter"] = inverter();
    json["hour"] = hour(assessment_.hour);
    json["day"] = Json::array();
    for (std::size_t h = 0; h < assessment_.peaks.size(); ++h) json["day"].push_back(hourInBrief(h));
    json["starts"] = starts();
    json["load_calculation"] = loadCalculation(assessment_.demand);
    json["segments"] = Json::array();
    for (const SegmentFigures& figures : assessment_.segments) json["segments"].push_back(segment(figures));
    json["dc_cable"] = dcCable();
    json["buildings"] = Json::array();
    for (const BuildingFigures& figures : assessment_.buildings)
      json["buildings"].push_back(building(figures));
    json["buses"] = Json::array();
    for (const BusFigures& figures : assessment_.buses) json["buses"].push_back(bus(figures));
    json["raceways"] = Json::array();
    for (const RacewayFigures& figures : assessment_.raceways) json["raceways"].push_back(raceway(figures));
    json["splice_boxes"] = Json::array();
    for (const SpliceBoxFigures& figures : assessment_.boxes) json["splice_boxes"].push_back(box(figures));
    json["wiring_spaces"] = Json::array();
    for (const WiringSpaceFigures& figures : assessment_.wiringSpaces)
      json["wiring_spaces"].push_back(wiringSpace(figures));
    json["neutral_terminals"] = Json::array();
    for (const NeutralTerminals& figures : neutralTerminals(plan_))
      json["neutral_terminals"].push_back(neutralBar(figures));
    json["supply_places"] = Json::array();
    for (const ClearedPlace& place : assessment_.supplyPlaces)
      json["supply_places"].push_back(supplyPlace(place));
    json["outage"] = outage();
    json["panels"] = Json::array();
    for (const PanelFigures& figures : assessment_.panels) json["panels"].push_back(panel(figures));
    json["breakers"] = Json::array();
    for (const BreakerFigures& figures : assessment_.breakers) json["breakers"].push_back(breaker(figures));
    json["on_site"] = Json::array();
    for (const OnSiteItem& item : assessment_.onSite) json["on_site"].push_back(onSite(item));
    json["findings"] = Json::array();
    for (const Finding& found : assessment_.findings) json["findings"].push_back(finding(found));
    json["working"] = Json::array();
    for (const Step& step : assessment_.working.steps()) json["working"].push_back(worked(step));
    return json;
  }

 private:
  [[nodiscard]] Json text(const Message& message) const {
    return message.id.key.empty() ? Json(nullptr) : Json(render(message, language_));
  }
  [[nodiscard]] Json texts(const std::vector<Message>& messages) const {
    Json list = Json::array();
    for (const Message& message : messages) list.push_back(render(message, language_));
    return list;
  }

  [[nodiscard]] Json inverter() const {
    Json curve = Json::array();
    for (const auto& point : assessment_.limits.curve) {
      curve.push_back(Json{{"time_s", num(point.time)},
                           {"total_W", num(point.total)},
                           {"total_VA", num(point.apparent)},
                           {"leg_A", num(point.leg)}});
    }
    return Json{{"total_W", num(assessment_.limits.total)},
                {"total_VA", num(assessment_.limits.totalApparent)},
                {"leg_A", num(assessment_.limits.leg)},
                {"overload", curve}};
  }

  static Json load(const HourLoad& figures) {
    return Json{{"connected_W", num(figures.connected.real)},
                {"connected_var", num(figures.connected.reactive)},
                {"connected_A", num(figures.connectedCurrent)},
                {"average_W", num(figures.average)},
                {"average_A", num(figures.averageCurrent)},
                {"likely_peak_W", num(figures.likelyPeak)},
                {"likely_peak_VA", num(figures.likelyPeakApparent)},
                {"likely_peak_A", num(figures.likelyPeakCurrent)},
                {"limit_A", num(figures.limit)},
                {"limit_W", num(figures.limitWatts)},
                {"limit_VA", num(figures.limitApparent)},
                {"odds_over", num(figures.oddsOver)},
                {"odds_over_high", num(figures.oddsOverHigh)},
                {"times_over_per_hour", num(figures.timesOver)},
                {"verdict", word(figures.verdict)}};
  }
  static Json hour(const HourFigures& figures) {
    return Json{{"hour", figures.hour},
                {"L1", load(figures.leg[0])},
                {"L2", load(figures.leg[1])},
                {"total", load(figures.total)},
                {"neutral_average_A", num(figures.neutralAverage)},
                {"neutral_worst_A", num(figures.neutralWorst)},
                {"all_known", figures.allKnown}};
  }
  [[nodiscard]] Json hourInBrief(std::size_t h) const {
    const DayProfile& profile = assessment_.profile;
    return Json{{"hour", h},
                {"L1_average_A", num(profile.current[h][0])},
                {"L2_average_A", num(profile.current[h][1])},
                {"L1_likely_peak_A", num(assessment_.peaks[h][0])},
                {"L2_likely_peak_A", num(assessment_.peaks[h][1])},
                {"average_W", num(profile.total[h])}};
  }

  template <class Q>
  static Json startFigure(const StartFigure<Q>& figure, const std::string& unit) {
    Json json;
    json["average_base_" + unit] = num(figure.averageBase);
    json["likely_base_" + unit] = num(figure.likelyBase);
    json["high_base_" + unit] = num(figure.highBase);
    json["likely_sum_" + unit] = num(figure.likelySum);
    json["high_sum_" + unit] = num(figure.highSum);
    json["likely_limit_" + unit] = num(figure.likelyLimit);
    json["high_limit_" + unit] = num(figure.highLimit);
    json["margin_" + unit] = num(figure.margin);
    json["likely_time_s"] = num(figure.likelyTime);
    json["high_time_s"] = num(figure.highTime);
    json["verdict"] = word(figure.verdict);
    return json;
  }
  [[nodiscard]] std::string loadName(LoadId id) const {
    const Circuit* circuit = circuitOf(plan_, id);
    if (circuit == nullptr) return {};
    for (const Load& load : circuit->loads) {
      if (load.id == id) return load.name;
    }
    return {};
  }
  [[nodiscard]] Json check(const StartCheck& figures) const {
    Json loads = Json::array();
    for (const LoadId id : figures.loads) loads.push_back(Json{{"load", id.number}, {"name", loadName(id)}});
    const auto leg = [&](Leg which) {
      const auto& figure = figures.leg[index(which)];
      return figure ? startFigure(*figure, "A") : Json(nullptr);
    };
    return Json{{"loads", loads},
                {"L1", leg(Leg::l1)},
                {"L2", leg(Leg::l2)},
                {"total", startFigure(figures.total, "VA")},
                {"total_real", startFigure(figures.real, "W")},
                {"battery", figures.battery ? startFigure(*figures.battery, "A") : Json(nullptr)},
                {"worst_leg", std::string(legName(figures.worstLeg))},
                {"known", figures.known},
                {"verdict", word(figures.verdict)}};
  }
  [[nodiscard]] Json starts() const {
    Json motors = Json::array();
    for (const MotorStart& motor : assessment_.starts.motors) {
      motors.push_back(Json{{"load", motor.load.number},
                            {"name", loadName(motor.load)},
                            {"circuit", motor.circuit.number},
                            {"kind", word(motor.kind)},
                            {"source", word(motor.source)},
                            {"start_A", num(motor.current)},
                            {"start_VA", num(motor.apparent)},
                            {"time_s", num(motor.time)},
                            {"power_factor", num(motor.powerFactor)},
                            {"automatic", motor.automatic},
                            {"known", motor.known}});
    }
    Json checks = Json::array();
    for (const StartCheck& figures : assessment_.starts.checks) checks.push_back(check(figures));
    const auto optional = [&](const std::optional<StartCheck>& figures) {
      return figures ? check(*figures) : Json(nullptr);
    };
    return Json{{"motors", motors},
                {"checks", checks},
                {"worst_pair", optional(assessment_.starts.worstPair)},
                {"all_at_once", optional(assessment_.starts.allAtOnce)}};
  }

  [[nodiscard]] Json text(const std::optional<Message>& message) const {
    return message ? text(*message) : Json(nullptr);
  }
  [[nodiscard]] Json calculation(const DemandCalculation& figures) const {
    Json lines = Json::array();
    for (const DemandLine& line : figures.lines) {
      lines.push_back(Json{{"what", text(line.what)},
                           {"items", line.items},
                           {"gross_VA", num(line.gross)},
                           {"factor", num(line.factor)},
                           {"load_VA", num(line.load)},
                           {"neutral_VA", num(line.neutral)},
                           {"citation", cited(line.rule)},
                           {"confirmed", line.confirmed}});
    }
    const auto leg = [](const DemandLeg& of) {
      return Json{
          {"load_VA", num(of.load)}, {"continuous_VA", num(of.continuous)}, {"neutral_VA", num(of.neutral)}};
    };
    return Json{{"complete", figures.complete()},
                {"confirmed", figures.confirmed},
                {"refused", text(figures.refused)},
                {"missing", texts(figures.missing)},
                {"notes", texts(figures.notes)},
                {"total_VA", num(figures.total)},
                {"continuous_VA", num(figures.continuous)},
                {"line_A", num(figures.line)},
                {"minimum_A", num(figures.minimum)},
                {"neutral_A", num(figures.neutral)},
                {"heavier_leg_A", num(figures.heavier)},
                {"heavier_leg_minimum_A", num(figures.heavierMinimum)},
                {"L1", leg(figures.leg[0])},
                {"L2", leg(figures.leg[1])},
                {"lines", lines}};
  }
  /// Null where the code is not covered.
  [[nodiscard]] Json loadCalculation(const DemandFigures& figures) const {
    if (!figures.covered) return nullptr;
    Json methods = Json::array();
    for (const MethodFigures& method : figures.service.methods) {
      const bool applies = !method.notApplicable;
      methods.push_back(Json{{"method", word(method.method)},
                             {"citation", language_.citation(method.rule)},
                             {"not_applicable", text(method.notApplicable)},
                             {"before", applies ? calculation(method.before) : Json(nullptr)},
                             {"verdict_before", word(method.verdictBefore)},
                             {"after", applies ? calculation(method.after) : Json(nullptr)},
                             {"verdict_after", word(method.verdictAfter)}});
    }
    const ChargeSetting& charge = figures.service.charge;
    Json paths = Json::array();
    for (const PathFigures& path : figures.paths) {
      Json conditions = Json::array();
      for (const CapacityCondition& condition : path.conditions)
        conditions.push_back(Json{{"what", text(condition.what)}, {"state", word(condition.state)}});
      paths.push_back(Json{{"path", word(path.path)},
                           {"citation", language_.citation(path.rule)},
                           {"closed", text(path.closed)},
                           {"asked_VA", num(path.asked)},
                           {"conditions", conditions},
                           {"caution", text(path.caution)},
                           {"verdict", word(path.verdict)},
                           {"chosen", path.chosen}});
    }
    const FeederLoad& load = figures.feederLoad;
    return Json{{"feeder", calculation(figures.feeder)},
                {"feeder_load", Json{{"load_VA", num(load.load)},
                                     {"continuous_VA", num(load.continuous)},
                                     {"neutral_VA", num(load.neutral)},
                                     {"typed", load.typed},
                                     {"neutral_typed", load.neutralTyped}}},
                {"service", Json{{"rating_A", num(figures.service.rating)},
                                 {"methods", methods},
                                 {"chosen", figures.service.chosen ? Json(word(*figures.service.chosen))
                                                                   : Json(nullptr)},
                                 {"charging", Json{{"asked", charge.asked},
                                                   {"entered_W", num(charge.entered)},
                                                   {"fits_W", num(charge.fits)},
                                                   {"governs", text(charge.governs)},
                                                   {"verdict", word(charge.verdict)}}}}},
                {"capacity", Json{{"carries_VA", num(figures.carries)},
                                  {"largest_single_load_VA", num(figures.largestSingle)},
                                  {"paths", paths}}}};
  }

  [[nodiscard]] Json segment(const SegmentFigures& figures) const {
    const DeviceChoice& device = figures.device;
    const ConductorChoice& conductor = figures.conductor;
    Json json;
    json["segment"] = word(figures.segment);
    json["entered"] = figures.entered;
    json["continuous_A"] = num(figures.load.continuous);
    json["other_A"] = num(figures.load.other);
    json["operating_A"] = num(figures.load.operating);
    json["neutral_A"] = num(figures.load.neutral);
    json["device"] = Json{{"minimum_A", num(device.minimum)},
                          {"rating_A", num(device.rating)},
                          {"in_plan_A", num(device.inPlan)},
                          {"maximum_A", num(device.maximum)},
                          {"maximum_from", text(device.maximumFrom)},
                          {"fixed", device.fixed},
                          {"next_rating_A", num(device.next)},
                          {"governs", text(device.governs)},
                          {"citation", cited(device.rule)}};
    json["conductor"] = Json{{"size_AWG", word(conductor.size)},
                             {"metal", word(conductor.metal, ChoiceWords<Metal>::words)},
                             {"terminal_column_C", degrees(conductor.terminalColumn)},
                             {"terminal_ampacity_A", num(conductor.terminalAmpacity)},
                             {"ambient_factor", num(conductor.ambientFactor)},
                             {"adjustment_factor", num(conductor.adjustmentFactor)},
                             {"derated_ampacity_A", num(conductor.deratedAmpacity)},
                             {"ampacity_A", num(conductor.ampacity)},
                             {"fixed", conductor.fixed},
                             {"not_protected", conductor.notProtected},
                             {"next_size_AWG", word(conductor.next)},
                             {"next_size_A", num(conductor.nextAmpacity)},
                             {"by_next_size_up", byNextSizeUp(conductor)},
                             {"governs", text(conductor.governs)},
                             {"citation", cited(conductor.rule)}};
    json["neutral_AWG"] = word(figures.neutral);
    json["neutral_governs"] = text(figures.neutralGoverns);
    json["neutral_citation"] = cited(figures.neutralRule);
    json["ground_AWG"] = word(figures.ground);
    json["ground_governs"] = text(figures.groundGoverns);
    json["ground_citation"] = cited(figures.groundRule);
    json["drop"] = nullptr;
    if (figures.drop) {
      json["drop"] = Json{{"L1_V", num(figures.drop->leg[0])},
                          {"L2_V", num(figures.drop->leg[1])},
                          {"L1_fraction", num(figures.drop->fraction[0])},
                          {"L2_fraction", num(figures.drop->fraction[1])},
                          {"line_to_line_V", num(figures.drop->lineToLine)}};
    }
    json["verdict"] = word(figures.verdict);
    json["over"] = texts(figures.over);
    json["not_known"] = texts(figures.notKnown);
    return json;
  }

  [[nodiscard]] Json cited(RuleId rule) const {
    return rule.key.empty() ? Json(nullptr) : Json(language_.citation(rule));
  }

  // Steps refer to earlier ones by their place in the list, from 0.
  [[nodiscard]] Json worked(const Step& step) const {
    const WorkingSubject* const subject = assessment_.working.subjectOf(step);
    const FormulaRow* const formula = formulaOf(step.formula);
    Json inputs = Json::array();
    for (const StepInput& input : step.inputs) {
      inputs.push_back(Json{{"symbol", std::string(input.symbol)},
                            {"value", rounded(input.value, kWorkedDecimals)},
                            {"unit", std::string(input.unit)},
                            {"grade", input.grade ? Json(word(*input.grade, kGradeWords)) : Json(nullptr)},
                            {"step", input.step == kNoStep ? Json(nullptr) : Json(input.step)},
                            {"from", input.from}});
    }
    return Json{{"about", subject != nullptr ? text(subject->name) : Json(nullptr)},
                {"about_number", subject != nullptr ? subject->number : 0},
                {"formula", std::string(step.formula.key)},
                {"notation", formula == nullptr
                                 ? std::string()
                                 : std::string(formula->result) + " = " + std::string(formula->expression)},
                {"result", rounded(step.result, kWorkedDecimals)},
                {"unit", std::string(step.unit)},
                {"inputs", inputs},
                {"note", step.note.id.key.empty() ? Json(nullptr) : text(step.note)},
                {"citation", cited(step.rule)},
                {"source", formula == nullptr ? std::string() : std::string(formula->source)}};
  }

  [[nodiscard]] Json dcCable() const {
    if (!assessment_.dcCable) return nullptr;
    const DcCableFigures& figures = *assessment_.dcCable;
    return Json{{"of_each_of_units", std::max(1, plan_.inverter->units)},
                {"current_A", num(figures.current)},
                {"required_A", num(figures.required)},
                {"device_A", num(figures.device)},
                {"device_governs", text(figures.deviceGoverns)},
                {"device_citation", cited(figures.deviceRule)},
                {"size_AWG", word(figures.conductor.size)},
                {"metal", word(figures.conductor.metal, ChoiceWords<Metal>::words)},
                {"terminal_column_C", degrees(figures.conductor.terminalColumn)},
                {"ambient_factor", num(figures.conductor.ambientFactor)},
                {"ampacity_A", num(figures.conductor.ampacity)},
                {"next_size_AWG", word(figures.conductor.next)},
                {"next_size_A", num(figures.conductor.nextAmpacity)},
                {"by_instructions", figures.byInstructions},
                {"governs", text(figures.conductor.governs)},
                {"citation", cited(figures.conductor.rule)},
                {"drop_V", figures.drop ? rounded(figures.drop->count(), kSecondDecimals) : Json(nullptr)},
                {"drop_fraction", num(figures.dropFraction)},
                {"over", texts(figures.over)},
                {"not_known", texts(figures.notKnown)},
                {"verdict", word(figures.verdict)}};
  }
  static Json building(const BuildingFigures& figures) {
    Json pieces = Json::array();
    for (const Segment piece : figures.pieces) pieces.push_back(word(piece));
    return Json{{"panel", figures.panel.number},
                {"segments", pieces},
                {"own_ground", word(figures.ownGround, ChoiceWords<Answer>::words)},
                {"grounding_electrode", word(figures.electrode, ChoiceWords<Answer>::words)},
                {"supply_conductor_AWG", word(figures.supply)},
                {"electrode_conductor_copper_AWG", word(figures.electrodeConductor)},
                {"disconnect", word(figures.disconnect, ChoiceWords<Answer>::words)},
                {"circuits", figures.circuits},
                {"least_disconnect_A", num(figures.leastDisconnect)},
                {"main_breaker_A", num(figures.mainBreaker)},
                {"drop_of_whole_feeder", num(figures.drop)}};
  }
  static Json bus(const BusFigures& figures) {
    Json sources = Json::array();
    for (const BreakerId id : figures.sources) sources.push_back(id.number);
    Json options = Json::array();
    for (const BusOptionFigure& option : figures.options) {
      options.push_back(Json{{"option", word(option.option, ChoiceWords<BusOption>::words)},
                             {"applies", option.applies},
                             {"sum_A", num(option.sum)},
                             {"most_A", num(option.most)},
                             {"verdict", word(option.verdict)}});
    }
    return Json{{"panel", figures.panel.number},
                {"source_breakers", sources},
                {"source_A_125", num(figures.sourceCurrent)},
                {"bounded_by_breaker", figures.bounded},
                {"options", options},
                {"chosen", word(figures.chosen, ChoiceWords<BusOption>::words)},
                {"verdict", word(figures.verdict)}};
  }
  [[nodiscard]] Json wiringSpace(const WiringSpaceFigures& figures) const {
    Json contents = Json::array();
    for (const WiringSpaceContent& content : figures.contents) {
      contents.push_back(Json{{"what", text(content.what)},
                              {"part", wordOf<WiringSpaceContent::Part::supply>(content.part, kSpaceParts)},
                              {"count", content.count},
                              {"size_AWG", word(std::optional(content.size))},
                              {"size_by_rating", content.byRating},
                              {"area_in2", num(content.area)}});
    }
    return Json{{"panel", figures.panel.number},
                {"contents", contents},
                {"spliced_conductors", figures.spliced},
                {"spliced_area_in2", num(figures.splicedArea)},
                {"conductors", figures.conductors},
                {"area_in2", num(figures.area)},
                {"space_in2", num(figures.space)},
                {"allowed_in2", num(figures.allowed)},
                {"with_splices_in2", num(figures.withSplices)},
                {"not_known", texts(figures.notKnown)},
                {"verdict", word(figures.verdict)}};
  }
  [[nodiscard]] Json raceway(const RacewayFigures& figures) const {
    Json contents = Json::array();
    for (const RacewayContent& content : figures.contents) {
      contents.push_back(Json{{"what", text(content.what)},
                              {"role", wordOf<RacewayContent::Role::other>(content.role, kContentRoles)},
                              {"count", content.count},
                              {"size_AWG", word(content.size)},
                              {"area_in2", num(content.area)}});
    }
    Json branches = Json::array();
    for (const RacewayBranch& branch : figures.branches) {
      branches.push_back(
          Json{{"circuit", branch.circuit.number},
               {"size_AWG", word(std::optional(branch.size))},
               {"device_A", num(branch.device)},
               {"terminal_ampacity_A", num(branch.ampacity.terminal)},
               {"derated_ampacity_A", num(branch.ampacity.derated)},
               {"ampacity_A", num(branch.ampacity.governing)},
               {"protection", wordOf<BranchProtection::over>(branch.protection, kProtections)}});
    }
    return Json{
        {"raceway", figures.raceway.number},
        {"contents", contents},
        {"conductors", figures.conductors},
        {"current_carrying", figures.carrying.most()},
        {"current_carrying_by_mode", Json{{"ordinary", figures.carrying.ordinary},
                                          {"outage", figures.carrying.outage},
                                          {"generator", figures.carrying.generator},
                                          {"bypass", figures.carrying.bypass}}},
        {"nipple", figures.nipple},
        {"adjustment_factor", num(figures.adjustment.count())},
        {"area_in2", num(figures.area)},
        {"inside_in2", num(figures.inside)},
        {"allowed_in2", num(figures.allowed)},
        {"fill", word(figures.fill)},
        {"smallest_trade_size",
         figures.smallest ? Json(std::string(Choice<TradeSize>(*figures.smallest).word())) : Json(nullptr)},
        {"circuits", branches},
        {"not_known", texts(figures.notKnown)},
        {"verdict", word(figures.verdict)}};
  }
  [[nodiscard]] Json box(const SpliceBoxFigures& figures) const {
    Json lines = Json::array();
    for (const BoxLine& line : figures.lines) {
      lines.push_back(Json{{"what", text(line.what)},
                           {"count", num(line.count)},
                           {"each_in3", num(line.each)},
                           {"volume_in3", num(line.volume())}});
    }
    return Json{{"splice_box", figures.box.number},      {"lines", lines},
                {"needed_in3", num(figures.needed)},     {"volume_in3", num(figures.volume)},
                {"goes_by_raceway_size", figures.large}, {"not_known", texts(figures.notKnown)},
                {"verdict", word(figures.verdict)}};
  }

  static Json neutralBar(const NeutralTerminals& figures) {
    return Json{{"panel", figures.panel.number},
                {"of_circuits", figures.circuits},
                {"of_feeders_and_sources", figures.feeders},
                {"of_surge_devices", figures.surgeDevices},
                {"landed", figures.landed()},
                {"terminals", figures.terminals ? Json(*figures.terminals) : Json(nullptr)},
                {"left", figures.left() ? Json(*figures.left()) : Json(nullptr)}};
  }

  [[nodiscard]] Json spaces(const std::optional<Placement>& place) const {
    const Panel* panel = place ? find(plan_, place->panel) : nullptr;
    return panel != nullptr ? Json(spaceNames(*panel, *place)) : Json(nullptr);
  }
  [[nodiscard]] Json supplyPlace(const ClearedPlace& place) const {
    Json steps = Json::array();
    for (const ClearingStep& step : place.steps) {
      Json dark = Json::array();
      for (const CircuitId circuit : step.dark) dark.push_back(circuit.number);
      steps.push_back(Json{{"breaker", step.breaker.number},
                           {"what", wordOf<Clearing::relocated>(step.what, kClearings)},
                           {"to", spaces(step.to)},
                           {"in_plan", !step.proposed},
                           {"without_supply", dark},
                           {"text", find(plan_, step.breaker) != nullptr ? text(instruction(plan_, step))
                                                                         : Json(std::string())}});
    }
    return Json{{"breaker", place.breaker.valid() ? Json(place.breaker.number) : Json(nullptr)},
                {"spaces", spaces(place.place)},
                {"what", text(nameOf(plan_, place))},
                {"feeds_backup", place.supplies},
                {"bypass", place.bypass},
                {"steps", steps},
                {"refusal", place.refusal ? text(*place.refusal) : Json(nullptr)}};
  }

  static Json run(const OutageRun& figures, TimeOfDay end) {
    Json points = Json::array();
    for (const OutagePoint& point : figures.points) {
      points.push_back(Json{{"at_h", num(point.at)},
                            {"charge", num(point.charge)},
                            {"load_W", num(point.load)},
                            {"L1_average_A", num(point.legAverage[0])},
                            {"L2_average_A", num(point.legAverage[1])}});
    }
    return Json{{"end_h", num(figures.end)},
                {"end_clock", word(end)},
                {"reason", word(figures.reason)},
                {"to_reserve_h", num(figures.toReserve)},
                {"drawn_Wh", num(figures.drawn)},
                {"delivered_Wh", num(figures.delivered)},
                {"idle_Wh", num(figures.idle)},
                {"losses_Wh", num(figures.losses)},
                {"points", points}};
  }
  [[nodiscard]] Json outage() const {
    const OutageFigures& figures = assessment_.outage;
    Json json;
    json["estimate"] = true;
    json["known"] = figures.known;
    json["missing"] = texts(figures.missing);
    json["capacity_now_Wh"] = num(figures.energy.capacityNow);
    json["usable_Wh"] = num(figures.energy.usable);
    json["temperature_factor"] =
        figures.energy.temperatureFactor > 0.0 ? num(figures.energy.temperatureFactor) : Json(nullptr);
    for (const char* key : {"runtime_h", "low", "likely", "high"}) json[key] = nullptr;
    if (figures.known) {
      json["runtime_h"] = num(figures.runtime);
      json["low"] = run(figures.low, figures.endLow);
      json["likely"] = run(figures.likely, figures.endLikely);
      json["high"] = run(figures.high, figures.endHigh);
    }
    return json;
  }

  [[nodiscard]] Json panel(const PanelFigures& figures) const {
    const Panel* entity = find(plan_, figures.panel);
    const auto leg = [](const ComplexPower& power) {
      return Json{{"connected_W", num(power.real)},
                  {"connected_var", num(power.reactive)},
                  {"connected_VA", num(power.apparent())}};
    };
    return Json{
        {"panel", figures.panel.number},
        {"name", entity != nullptr ? entity->name : std::string()},
        {"planned", Json{{"L1", leg(figures.connected[0])}, {"L2", leg(figures.connected[1])}}},
        {"before", Json{{"L1", leg(figures.connectedBefore[0])}, {"L2", leg(figures.connectedBefore[1])}}},
        {"free_spaces", figures.freeSpaces}};
  }
  static Json breaker(const BreakerFigures& figures) {
    return Json{
        {"breaker", figures.breaker.number},
        {"running_A", Json::array({num(figures.running[0]), num(figures.running[1])})},
        {"connected_VA", Json::array({num(figures.connected[0]), num(figures.connected[1])})},
        {"grade", figures.grade ? Json(std::string(kGradeWords[static_cast<std::size_t>(*figures.grade)]))
                                : Json(nullptr)},
        {"known", figures.known}};
  }

  [[nodiscard]] Json onSite(const OnSiteItem& item) const {
    return Json{
        {"key", std::string(item.key)},
        {"who", word(item.doer)},
        {"where", text(item.where)},
        {"what", text(item.what)},
        {"place", Json{{"kind", std::string(recordType(item.place.kind).name)},
                       {"id", item.place.id},
                       {"field", item.field.empty() ? Json(nullptr) : Json(std::string(item.field))}}},
        {"panel", item.panel.valid() ? Json(item.panel.number) : Json(nullptr)}};
  }
  [[nodiscard]] Json finding(const Finding& found) const {
    Json places = Json::array();
    for (const EntityRef& place : found.places) {
      places.push_back(Json{{"kind", std::string(recordType(place.kind).name)}, {"id", place.id}});
    }
    return Json{{"key", std::string(found.key)},
                {"severity", word(found.severity)},
                {"basis", word(found.basis)},
                {"citation", cited(found.rule)},
                {"plain", text(found.plain)},
                {"trade", text(found.trade)},
                {"places", places},
                {"fix", found.fix ? text(found.fixName) : Json(nullptr)},
                {"other_fix", found.otherFix ? text(found.otherFixName) : Json(nullptr)}};
  }

  const Plan& plan_;
  const Assessment& assessment_;
  const Language& language_;
};

}  // namespace

std::string reportJson(const Plan& plan, const Assessment& assessment, const std::string& name,
                       const Language& language) {
  // A text that is no UTF-8 gets the replacement character instead of ending the program.
  return Report(plan, assessment, language).whole(name).dump(2, ' ', false, Json::error_handler_t::replace) +
         "\n";
}

}  // namespace stayalight
