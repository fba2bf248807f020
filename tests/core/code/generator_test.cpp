// The build must stop at a malformed table, with file, line and reason.

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "core/code/generator/tables_generator.h"

using namespace stayalight::generator;

namespace {

namespace fs = std::filesystem;

TableFiles published() {
  TableFiles files;
  for (const std::string& name : tableFileNames()) {
    std::ifstream in(std::string(STAYALIGHT_SOURCE_DIR) + "/resources/tables/" + name, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    files[name] = text.str();
  }
  return files;
}

std::string refusalOf(const TableFiles& files) {
  try {
    (void)generateHeader(files);
  } catch (const MalformedTable& malformed) {
    return malformed.what();
  }
  return "accepted";
}

std::size_t lineOf(const std::string& text, const std::string& row) {
  const std::size_t at = text.find("\n" + row + "\n");
  EXPECT_NE(at, std::string::npos) << row;
  return static_cast<std::size_t>(
             std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at) + 1, '\n')) +
         1;
}

struct Damage {
  const char* file;
  const char* row;          // as published
  const char* replacement;  // several lines where rows trade places
  const char* reason;       // part of it
};

class MalformedRow : public testing::TestWithParam<Damage> {};

TEST_P(MalformedRow, IsRefusedWithFileLineAndReason) {
  const Damage& damage = GetParam();
  TableFiles files = published();
  std::string& text = files[damage.file];
  const std::size_t line = lineOf(text, damage.row);
  const std::string row = std::string("\n") + damage.row + "\n";
  text.replace(text.find(row), row.size(),
               std::string("\n") + damage.replacement + (*damage.replacement ? "\n" : ""));
  const std::string refusal = refusalOf(files);
  const std::string place = std::string(damage.file) + ":" + std::to_string(line) + ": ";
  EXPECT_TRUE(refusal.starts_with(place)) << refusal << "\nexpected at " << place;
  EXPECT_NE(refusal.find(damage.reason), std::string::npos) << refusal;
}

INSTANTIATE_TEST_SUITE_P(
    Tables, MalformedRow,
    testing::Values(
        Damage{"demand.csv", "cooking_c_1,kW,load.cooking,8,memory,8,seen,8,seen,8,seen",
               "cooking_c_2,kW,load.cooking,8,memory,8,seen,8,seen,8,seen", "is unknown or out of order"},
        Damage{"demand.csv", "cooking_c_1,kW,load.cooking,8,memory,8,seen,8,seen,8,seen",
               "cooking_c_1,kW,load.cooking,8,memory,8,seen,8,sure,8,seen", "not one of the words"},
        Damage{"demand.csv", "cooking_c_1,kW,load.cooking,8,memory,8,seen,8,seen,8,seen",
               "cooking_c_1,kW,load.cooking,8,memory,8,,8,seen,8,seen", "stand together"},
        Damage{"demand.csv", "cooking_c_1,kW,load.cooking,8,memory,8,seen,8,seen,8,seen",
               "cooking_c_1,kW,load.cook,8,memory,8,seen,8,seen,8,seen", "no rule is called"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,40,50,55,35,40", "7 columns expected, 6 found"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,40,50,55,35,40,45,9", "7 columns expected, 8 found"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,40,5o,55,35,40,45", "\"5o\" is not a number"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,40,-50,55,35,40,45", "\"-50\" is not a number"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,40,nan,55,35,40,45", "\"nan\" is not a number"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,40,0,55,35,40,45", "\"0\" is not above 0"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,,50,55,35,40,45", "\"\" is not a number"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "8,55,50,55,35,40,45", "falls from one column"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "7,40,50,55,35,40,45", "\"7\" is not a conductor size"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "6,55,65,75,40,50,55\n8,40,50,55,35,40,45",
               "out of order"},
        Damage{"ampacity.csv", "8,40,50,55,35,40,45", "", "out of order"},
        Damage{"ambient_correction.csv", "35,0.91,0.94,0.96", "29,0.91,0.94,0.96", "out of order"},
        Damage{"ambient_correction.csv", "85,,,0.29", "85,,,", "is not a number"},
        Damage{"adjustment.csv", "7,9,70", "8,9,70", "do not follow"},
        Damage{"adjustment.csv", "41,,35", "41,50,35", "do not follow"},
        Damage{"adjustment.csv", "7,9,70", "7,,70", "is not a number"},
        Damage{"standard_ratings.csv", "60,2017", "60.5,2017", "is not a whole number"},
        Damage{"standard_ratings.csv", "60,2017", "60,2018", "not one of the words"},
        Damage{"standard_ratings.csv", "60,2017", "50,2017", "out of order"},
        Damage{"small_conductors.csv", "12,al,15", "12,tin,15", "not one of the words"},
        Damage{"electrode_conductors.csv", "3/0,250,4", "1/0,250,4", "sizes do not rise"},
        Damage{"electrode_conductors.csv", "350,500,2", "350,,2", "has no end"},
        Damage{"grounding_conductors.csv", "100,8,6", "100,12,6", "out of order"},
        Damage{"conductor_properties.csv", "8,16510,8.367,0.778,1.28", "8,16510,8.367,,1.28",
               "is not a number"},
        Damage{"conductor_impedance.csv", "12,0.054,0.068,2.0,2.0,2.0,3.2,3.2,3.2",
               "12,0.054,0.068,2.0,2.0,2.0,3.2,3.2,", "is not a number"},
        Damage{"motor_full_load.csv", "7 1/2,80,46.0,44.0,40", "7 1/,80,46.0,44.0,40", "is not a horsepower"},
        Damage{"motor_full_load.csv", "3/4,13.8,7.9,7.6,6.9", "1/4,13.8,7.9,7.6,6.9", "out of order"},
        Damage{"motor_locked_rotor.csv", "1/2,58.8,32.5,29.4,table", "1/2,58.8,32.5,29.4,guess",
               "not one of the words"},
        Damage{"motor_code_letters.csv", "B,3.15,3.54", "B,3.14,3.54", "out of order"},
        Damage{"motor_code_letters.csv", "B,3.15,3.54", "b,3.15,3.54", "is no letter"},
        Damage{"conductor_areas.csv", "12,0.0133,0.0181", "12,0.0133,", "is not a number"},
        Damage{"conductor_areas.csv", "12,0.0133,0.0181", "12,0.0093,0.0181", "out of order"},
        Damage{"raceway_areas.csv", "emt,0.304,0.533,0.864,1.496,2.036,3.356,5.858,8.846",
               "emt,0.304,0.533,0.464,1.496,2.036,3.356,5.858,8.846", "area does not rise"},
        Damage{"raceway_areas.csv", "emt,0.304,0.533,0.864,1.496,2.036,3.356,5.858,8.846",
               "rmc,0.304,0.533,0.864,1.496,2.036,3.356,5.858,8.846", "unknown or out of order"},
        Damage{"raceway_fill.csv", "2,2,31", "3,3,31", "do not follow"},
        Damage{"box_conductor_volumes.csv", "12,2.25", "12,1.25", "out of order"},
        Damage{"box_volumes.csv", "square_4_1_1/2,21.0", "square_5,21.0", "unknown or out of order"},
        Damage{"code_numbers.csv", "nipple_length,24,in,conductor.nipple",
               "niple_length,24,in,conductor.nipple", "unknown or out of order"},
        Damage{"code_numbers.csv", "nipple_length,24,in,conductor.nipple",
               "nipple_length,24,in,conductor.none", "no rule is called"},
        Damage{"code_numbers.csv", "terminal_size,1,AWG,conductor.terminals",
               "terminal_size,5,AWG,conductor.terminals", "is not a conductor size"}));

TEST(Generator, AcceptsThePublishedTables) { EXPECT_EQ(refusalOf(published()), "accepted"); }

TEST(Generator, RefusesAMissingFileAndAnotherHeading) {
  for (const std::string& name : tableFileNames()) {
    TableFiles without = published();
    without.erase(name);
    EXPECT_EQ(refusalOf(without), name + ":0: file is missing");
    TableFiles empty = published();
    empty[name] = "# nothing\n";
    EXPECT_EQ(refusalOf(empty), name + ":0: no line names the columns");
    TableFiles renamed = published();
    renamed[name] = "a,b\n1,2\n";
    EXPECT_TRUE(refusalOf(renamed).starts_with(name + ":1: columns must be")) << refusalOf(renamed);
  }
}

TEST(Generator, RefusesBrokenCitations) {
  const std::string good = published().at("citations.csv");
  struct Case {
    const char* from;
    const char* to;
    const char* reason;
  };
  for (const Case& broken :
       {Case{"conductor.small,code", "conductor.Small,code", "not of the form topic.rule"},
        Case{"conductor.small,code", "small,code", "not of the form topic.rule"},
        Case{"conductor.small,code", "conductor.protected,code", "out of order or twice"},
        Case{"conductor.small,code", "conductor.small,law", "not one of the words"},
        Case{"conductor.small,code,seen,240.4(D),240.4(D),240.4(D),", "conductor.small,code,seen,,,,",
             "has no section in any edition"},
        Case{"\"210.4(D), 200.4(B)\",\"210.4(D), 200.4(B)\",\"210.4(D), 200.4(B)\",",
             "\"210.4(D), 200.4(B),,,", "quote is not closed"}}) {
    TableFiles files = published();
    std::string text = good;
    const std::size_t at = text.find(broken.from);
    ASSERT_NE(at, std::string::npos) << broken.from;
    files["citations.csv"] = text.replace(at, std::string(broken.from).size(), broken.to);
    EXPECT_NE(refusalOf(files).find(broken.reason), std::string::npos) << refusalOf(files);
  }
}

TEST(GeneratorProgram, ExitsWithOneAndSaysWhereOnStandardError) {
  const fs::path folder = fs::temp_directory_path() / ("stayalight_tables_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  TableFiles files = published();
  std::string& text = files["ampacity.csv"];
  const std::size_t line = lineOf(text, "8,40,50,55,35,40,45");
  text.replace(text.find("8,40,50,55"), 10, "8,40,fifty,55");
  for (const auto& [name, content] : files) std::ofstream(folder / name, std::ios::binary) << content;
  const fs::path errors = folder / "errors.txt";
  const fs::path header = folder / "out.h";
  const auto run = [&](const std::string& tables) {
    const std::string command = std::string("\"") + STAYALIGHT_TABLES_GENERATOR + "\" \"" + tables + "\" \"" +
                                header.string() + "\" 2> \"" + errors.string() + "\"";
    return WEXITSTATUS(std::system(command.c_str()));
  };
  EXPECT_EQ(run(folder.string()), 1);
  std::ostringstream said;
  said << std::ifstream(errors).rdbuf();
  EXPECT_EQ(said.str(),
            folder.string() + "/ampacity.csv:" + std::to_string(line) + ": \"fifty\" is not a number\n");
  EXPECT_FALSE(fs::exists(header));
  EXPECT_EQ(run(std::string(STAYALIGHT_SOURCE_DIR) + "/resources/tables"), 0);
  EXPECT_GT(fs::file_size(header), 10000U);
  fs::remove_all(folder);
}

}  // namespace
