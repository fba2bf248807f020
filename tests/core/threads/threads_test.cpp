// One plan, its copies and many threads: the answers are the same, to the last rounded digit. Built once more
// with the thread sanitizer by .ci/run.

#include <gtest/gtest.h>

#include <string>
#include <thread>
#include <vector>

#include "core/assess/assess.h"
#include "core/report/report.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

std::string answers(const Plan& plan) {
  return reportJson(plan, assess(plan, Circumstances{true}), "plan", plainEnglish());
}

TEST(Threads, GiveTheSameAnswersAboutOneSharedPlan) {
  const Plan plan = example::exampleHouseMoved();
  const std::string expected = answers(plan);
  ASSERT_FALSE(expected.empty());
  std::vector<std::string> found(4);
  {
    std::vector<std::jthread> threads;
    for (std::string& mine : found) {
      threads.emplace_back([&plan, &mine] {
        for (int i = 0; i < 5; ++i) mine = answers(plan);
      });
    }
  }
  for (const std::string& each : found) EXPECT_EQ(each, expected);
}

TEST(Threads, ChangeTheirOwnCopiesAndLeaveTheSharedPartsAlone) {
  const Plan plan = example::exampleHouseMoved();
  const std::string expected = answers(plan);
  const CircuitId pump = example::circuitNamed(plan, "Well pump");
  std::vector<std::string> found(4);
  {
    std::vector<std::jthread> threads;
    for (std::size_t i = 0; i < found.size(); ++i) {
      threads.emplace_back([&plan, &mine = found[i], pump, i] {
        Plan own = plan;
        example::editCircuit(own, pump).name = "Pump of thread " + std::to_string(i);
        mine = answers(own);
      });
    }
  }
  EXPECT_EQ(answers(plan), expected);
  for (std::size_t i = 0; i < found.size(); ++i) {
    EXPECT_NE(found[i].find("Pump of thread " + std::to_string(i)), std::string::npos);
  }
}

TEST(Threads, CopiesOfAPlanHaveTheSameAnswers) {
  const Plan plan = example::exampleHouseMoved();
  Plan rebuilt = plan;
  for (auto& circuit : rebuilt.circuits) circuit = Shared<Circuit>(*circuit);  // every part a new one
  for (auto& breaker : rebuilt.breakers) breaker = Shared<Breaker>(*breaker);
  EXPECT_EQ(answers(rebuilt), answers(plan));
}

}  // namespace
}  // namespace stayalight
