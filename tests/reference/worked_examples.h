#pragma once

// Reads tests/reference/worked_examples.json: published examples with their inputs, answers, tolerances and
// sources.

#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

namespace reference {

class WorkedExample {
 public:
  explicit WorkedExample(const std::string& id) {
    std::ifstream in(std::string(STAYALIGHT_SOURCE_DIR) + "/tests/reference/worked_examples.json");
    for (const auto& example : nlohmann::json::parse(in)) {
      if (example.at("id") == id) example_ = example;
    }
    if (example_.is_null()) throw std::runtime_error("no worked example " + id);
  }

  [[nodiscard]] double input(const std::string& key) const {
    return example_.at("inputs").at(key).get<double>();
  }
  [[nodiscard]] std::string word(const std::string& key) const {
    const auto& value = example_.at("inputs").at(key);
    return value.is_string() ? value.get<std::string>() : value.dump();
  }
  [[nodiscard]] double expected(const std::string& key) const {
    return example_.at("expected").at(key).get<double>();
  }
  [[nodiscard]] std::string expectedWord(const std::string& key) const {
    const auto& value = example_.at("expected").at(key);
    return value.is_string() ? value.get<std::string>() : value.dump();
  }
  [[nodiscard]] double tolerance(const std::string& key) const {
    const auto& tolerances = example_.at("tolerance");
    return tolerances.contains(key) ? tolerances.at(key).get<double>() : tolerances.at("*").get<double>();
  }
  void expectNear(const std::string& key, double found) const {
    EXPECT_NEAR(found, expected(key), tolerance(key))
        << example_.at("id") << ' ' << key << ", " << example_.at("source");
  }
  void expectWord(const std::string& key, const std::string& found) const {
    EXPECT_EQ(found, expectedWord(key)) << example_.at("id") << ' ' << key << ", " << example_.at("source");
  }

 private:
  nlohmann::json example_;
};

}  // namespace reference
