#include "core/report/report.h"
#include "core/file/file.h"

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using Json = nlohmann::json;

std::string textOf(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

Json report(const Plan& plan, const Assessment& assessment) {
  return Json::parse(reportJson(plan, assessment, "house.stayalight", plainEnglish()));
}

TEST(Report, SaysWhatItIsOfAndForWhen) {
  const Plan plan = example::exampleHouseMoved();
  const Json json = report(plan, Assessment{});
  EXPECT_EQ(json["stayalight_assessment"]["format"], 1);
  EXPECT_EQ(json["plan"]["file"], "house.stayalight");
  EXPECT_EQ(json["plan"]["code_edition"], "2023");
  EXPECT_EQ(json["scenario"]["start"], "18:00");
  EXPECT_EQ(json["day"].size(), 24u);
}

TEST(Report, RoundsEachFigureOnceByItsUnit) {
  Assessment assessment;
  assessment.hour.leg[1].averageCurrent = {AcAmperes(1.0 / 3.0), AcAmperes(12.345678), AcAmperes(99.999)};
  assessment.hour.leg[1].average = {Watts(0.04), Watts(1234.56), Watts(-0.01)};
  assessment.hour.leg[1].oddsOver = 0.123456;
  assessment.hour.leg[1].limit = AcAmperes(25);
  assessment.hour.leg[1].verdict = Verdict::over;
  const Json leg = report(Plan{}, assessment)["hour"]["L2"];
  EXPECT_EQ(leg["average_A"]["low"], 0.33);
  EXPECT_EQ(leg["average_A"]["likely"], 12.35);
  EXPECT_EQ(leg["average_A"]["high"], 100.0);
  EXPECT_EQ(leg["average_W"]["low"], 0.0);
  EXPECT_EQ(leg["average_W"]["likely"], 1234.6);
  EXPECT_EQ(leg["average_W"]["high"].dump(), "0.0");
  EXPECT_EQ(leg["odds_over"], 0.1235);
  EXPECT_EQ(leg["limit_A"], 25.0);
  EXPECT_EQ(leg["verdict"], "over");
}

TEST(Report, HoldsTheStepsOfEachFigure) {
  const Plan plan = calculated::house();
  EXPECT_TRUE(report(plan, assess(plan))["working"].empty());
  const Assessment recorded = assess(plan, {.record = true});
  const Json steps = report(plan, recorded)["working"];
  ASSERT_EQ(steps.size(), recorded.working.steps().size());
  bool ofFeeder = false;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    EXPECT_FALSE(steps[i]["notation"].get<std::string>().empty());
    for (const Json& input : steps[i]["inputs"]) {
      // Each value comes from an earlier step that has it as its result, or says where it is from.
      if (input["step"].is_null()) {
        EXPECT_FALSE(input["from"].get<std::string>().empty()) << steps[i]["formula"];
        continue;
      }
      ASSERT_LT(input["step"].get<std::size_t>(), i);
      EXPECT_NEAR(steps[input["step"].get<std::size_t>()]["result"].get<double>(),
                  input["value"].get<double>(), 2e-6);
    }
    ofFeeder = ofFeeder || steps[i]["about"] == "load of the backup feeder";
  }
  EXPECT_TRUE(ofFeeder);
}

TEST(Report, HoldsTheLoadCalculationLineByLine) {
  const Plan plan = calculated::house();
  const Assessment assessment = assess(plan);
  const Json json = report(plan, assessment)["load_calculation"];
  EXPECT_EQ(json["feeder"]["total_VA"], 3930.0);  // by hand in tests/core/demand/figures_test.cpp
  EXPECT_EQ(json["feeder"]["complete"], true);
  EXPECT_EQ(json["feeder"]["confirmed"], false);
  EXPECT_EQ(json["feeder_load"]["typed"], false);
  double sum = 0.0;
  for (const Json& line : json["feeder"]["lines"]) {
    EXPECT_FALSE(line["what"].get<std::string>().empty());
    if (!line["load_VA"].is_null()) sum += line["load_VA"].get<double>();
  }
  EXPECT_NEAR(sum, 3930.0, 0.5);
  EXPECT_EQ(json["service"]["methods"].size(), 4u);
  EXPECT_EQ(json["service"]["methods"][3]["after"], nullptr);
  EXPECT_EQ(json["capacity"]["paths"].size(), 5u);
  EXPECT_EQ(json["capacity"]["paths"][0]["verdict"], "within");
  EXPECT_EQ(json["capacity"]["paths"][0]["conditions"][0]["state"], "kept");

  Plan abroad = plan;
  abroad.site.edit().country = Country::canada;
  EXPECT_TRUE(report(abroad, assess(abroad))["load_calculation"].is_null());
}

TEST(Report, WhatIsNotKnownIsNull) {
  const Json json = report(Plan{}, Assessment{});
  EXPECT_TRUE(json["hour"]["L1"]["limit_A"].is_null());
  EXPECT_TRUE(json["starts"]["worst_pair"].is_null());
  EXPECT_TRUE(json["outage"]["runtime_h"].is_null());
  EXPECT_EQ(json["hour"]["L1"]["verdict"], "not_known");
}

TEST(Report, NamesStartsByTheirLoadWithSumsLimitsAndSource) {
  const Plan plan = example::exampleHouse();
  Assessment assessment;
  MotorStart motor;
  motor.load = example::loadNamed(plan, "Well pump");
  motor.source = StartSource::nameplate;
  motor.current = exactly(AcAmperes(30));
  assessment.starts.motors.push_back(motor);
  StartCheck check;
  check.loads = {motor.load};
  check.leg[0].emplace();
  check.leg[0]->highSum = AcAmperes(41.5);
  check.leg[0]->highLimit = AcAmperes(50);
  check.leg[0]->margin = AcAmperes(8.5);
  check.leg[0]->verdict = Verdict::within;
  assessment.starts.checks.push_back(check);
  const Json starts = report(plan, assessment)["starts"];
  EXPECT_EQ(starts["motors"][0]["name"], "Well pump");
  EXPECT_EQ(starts["motors"][0]["source"], "nameplate");
  EXPECT_EQ(starts["motors"][0]["start_A"]["likely"], 30.0);
  EXPECT_EQ(starts["checks"][0]["L1"]["high_sum_A"], 41.5);
  EXPECT_EQ(starts["checks"][0]["L1"]["margin_A"], 8.5);
  EXPECT_EQ(starts["checks"][0]["L1"]["verdict"], "within");
  EXPECT_TRUE(starts["checks"][0]["L2"].is_null());
}

TEST(Report, CountsTheNeutralsOnEachBar) {
  Plan plan = example::exampleHouseMoved();
  example::editPanel(plan, example::kMain).neutralTerminals = 24;
  const Json bars = report(plan, Assessment{})["neutral_terminals"];
  ASSERT_EQ(bars.size(), plan.panels.size());
  EXPECT_EQ(bars[0]["panel"], example::kMain.number);
  EXPECT_EQ(bars[0]["of_feeders_and_sources"], 1);
  EXPECT_EQ(bars[0]["landed"], bars[0]["of_circuits"].get<int>() + 1);
  EXPECT_EQ(bars[0]["left"], 24 - bars[0]["landed"].get<int>());
  EXPECT_TRUE(bars[1]["terminals"].is_null());
  EXPECT_TRUE(bars[1]["left"].is_null());
}

TEST(Report, GivesRuntimeWithClockTimeAndReason) {
  Assessment assessment;
  assessment.outage.known = true;
  assessment.outage.runtime = {Hours(14.5), Hours(17.256), Hours(20)};
  assessment.outage.endLikely = TimeOfDay(11 * 60 + 15);
  assessment.outage.likely.reason = OutageEnd::floorReached;
  assessment.outage.likely.points.push_back({Hours(0), 1.0, {}, {}, Watts(412.34)});
  const Json outage = report(Plan{}, assessment)["outage"];
  EXPECT_EQ(outage["estimate"], true);
  EXPECT_EQ(outage["runtime_h"]["likely"], 17.26);
  EXPECT_EQ(outage["likely"]["end_clock"], "11:15");
  EXPECT_EQ(outage["likely"]["reason"], "floor_reached");
  EXPECT_EQ(outage["likely"]["points"][0]["load_W"], 412.3);
}

TEST(Report, AFindingHasSeverityBasisSentencesAndPlaces) {
  Assessment assessment;
  Finding finding;
  finding.key = "multiwire.split";
  finding.severity = Severity::danger;
  finding.basis = Basis::code;
  finding.plain = say(MessageId{"field.not_text"}, std::string("name"));
  finding.trade = say(MessageId{"field.not_whole"}, std::string("row"));
  finding.places = {{RecordKind::circuit, 4}};
  assessment.findings.push_back(finding);
  const Json json = report(Plan{}, assessment)["findings"][0];
  EXPECT_EQ(json["key"], "multiwire.split");
  EXPECT_EQ(json["severity"], "danger");
  EXPECT_EQ(json["basis"], "code");
  EXPECT_EQ(json["plain"], "name wants a text");
  EXPECT_EQ(json["trade"], "row wants a whole number");
  EXPECT_EQ(json["places"][0]["kind"], "circuit");
  EXPECT_EQ(json["places"][0]["id"], 4);
  EXPECT_TRUE(json["citation"].is_null());
}

/// The report of a real plan has every key that the schema asks for, and none besides.
void keepsTo(const Json& value, const Json& schema, const std::string& path) {
  if (value.is_object()) {
    ASSERT_TRUE(schema.contains("properties")) << path;
    for (const auto& key : schema["required"])
      EXPECT_TRUE(value.contains(key.get<std::string>())) << path << "/" << key;
    for (const auto& [key, inner] : value.items()) {
      ASSERT_TRUE(schema["properties"].contains(key)) << path << "/" << key;
      keepsTo(inner, schema["properties"][key], path + "/" + key);
    }
  } else if (value.is_array()) {
    ASSERT_EQ(schema["type"], "array") << path;
    for (const auto& inner : value) keepsTo(inner, schema["items"], path + "[]");
  } else if (schema.contains("enum")) {
    EXPECT_NE(std::find(schema["enum"].begin(), schema["enum"].end(), value), schema["enum"].end())
        << path << " " << value;
  } else {
    const std::string found = value.is_null()      ? "null"
                              : value.is_boolean() ? "boolean"
                              : value.is_string()  ? "string"
                                                   : "number";
    const Json& types = schema["type"];
    EXPECT_TRUE(types.is_array() ? std::find(types.begin(), types.end(), found) != types.end()
                                 : types == found)
        << path << " is " << found;
  }
}

TEST(Report, OfARealPlanKeepsToTheSchema) {
  const Json schema = Json::parse(reportSchema());
  std::vector<Plan> plans = {Plan{}, example::exampleHouse(), example::exampleHouseMoved()};
  for (const char* name : {"plain-house", "river-house"}) {
    const std::string path = std::string(STAYALIGHT_SOURCE_DIR "/samples/") + name + ".stayalight";
    plans.push_back(readPlan(textOf(path), path).value().plan);
  }
  for (const Plan& plan : plans) keepsTo(report(plan, assess(plan)), schema, "");
}

TEST(Report, TheSchemaInResourcesIsTheOneOfTheReport) {
  EXPECT_EQ(textOf(STAYALIGHT_SOURCE_DIR "/resources/schema/assessment.schema.json"), reportSchema())
      << "ninja schemas writes it anew";
}

}  // namespace
}  // namespace stayalight
