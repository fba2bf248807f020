// The table of texts against the sources that say them: every id has a text, every argument a place in it.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "core/message/message.h"

namespace stayalight {
namespace {

namespace fs = std::filesystem;

struct Source {
  std::string name;
  std::string text;
};

/// Blanks // comments, so that an example in a comment is no use of an id.
std::string withoutComments(const std::string& text) {
  std::string out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    bool quoted = false;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      if (line[i] == '\\') {
        ++i;
        continue;
      }
      if (line[i] == '"') quoted = !quoted;
      if (!quoted && line[i] == '/' && line[i + 1] == '/') {
        line.resize(i);
        break;
      }
    }
    out += line + "\n";
  }
  return out;
}

const std::vector<Source>& coreSources() {
  static const std::vector<Source> all = [] {
    std::vector<Source> sources;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(STAYALIGHT_SOURCE_DIR) / "core")) {
      const std::string extension = entry.path().extension().string();
      if (extension != ".cpp" && extension != ".h") continue;
      std::ifstream file(entry.path());
      std::stringstream content;
      content << file.rdbuf();
      sources.push_back({entry.path().string(), withoutComments(content.str())});
    }
    return sources;
  }();
  return all;
}

const char* englishOf(std::string_view key) {
  for (const TextRow& row : texts()) {
    if (row.key == key) return row.english;
  }
  return nullptr;
}

/// Numbers of the %1 ... %9 in a text.
std::set<int> places(std::string_view text) {
  std::set<int> found;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    if (text[i] != '%') continue;
    if (text[i + 1] >= '1' && text[i + 1] <= '9') found.insert(text[i + 1] - '0');
    ++i;
  }
  return found;
}

/// Arguments of the call whose opening bracket stands at `open`, or -1 where the call does not end.
int argumentsOfCall(const std::string& text, std::size_t open) {
  int depth = 0;
  int count = 1;
  bool quoted = false;
  for (std::size_t i = open; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c == '\\') ++i;
      if (c == '"') quoted = false;
      continue;
    }
    if (c == '"') quoted = true;
    if (c == '(' || c == '{' || c == '[') ++depth;
    if (c == ')' || c == '}' || c == ']') {
      if (--depth == 0) return count;
    }
    if (c == ',' && depth == 1) ++count;
  }
  return -1;
}

TEST(Texts, keysAreUniqueAndSorted) {
  for (std::size_t i = 1; i < texts().size(); ++i) EXPECT_LT(texts()[i - 1].key, texts()[i].key);
  EXPECT_FALSE(texts().empty());
}

TEST(Texts, placesCountFromOneWithoutGapsInEveryForm) {
  for (const TextRow& row : texts()) {
    const std::string_view english = row.english;
    EXPECT_FALSE(english.empty()) << row.key;
    const std::set<int> all = places(english);
    int expected = 1;
    for (const int place : all) EXPECT_EQ(place, expected++) << row.key;
  }
}

TEST(Texts, everyIdOfCoreHasAText) {
  const std::regex declared(
      "MessageId\\s+\\w*\\s*\\{\\s*\"([^\"]*)\"\\s*\\}|MessageId\\{\\s*\"([^\"]*)\"\\s*\\}");
  std::size_t found = 0;
  for (const Source& source : coreSources()) {
    for (std::sregex_iterator it(source.text.begin(), source.text.end(), declared), end; it != end; ++it) {
      const std::string key = (*it)[1].matched ? (*it)[1].str() : (*it)[2].str();
      if (key.empty()) continue;
      EXPECT_NE(englishOf(key), nullptr) << key << " in " << source.name;
      ++found;
    }
  }
  EXPECT_GT(found, 50u) << "the sources were not found";
}

TEST(Texts, everySentenceGetsAsManyArgumentsAsItHasPlaces) {
  const std::regex declared("MessageId\\s+(\\w+)\\s*\\{\\s*\"([^\"]*)\"\\s*\\}");
  std::map<std::string, std::string> shared;  // ids declared in headers
  for (const Source& source : coreSources()) {
    if (source.name.back() != 'h') continue;
    for (std::sregex_iterator it(source.text.begin(), source.text.end(), declared), end; it != end; ++it) {
      shared[(*it)[1]] = (*it)[2];
    }
  }
  std::size_t calls = 0;
  for (const Source& source : coreSources()) {
    std::map<std::string, std::string> ids = shared;
    for (std::sregex_iterator it(source.text.begin(), source.text.end(), declared), end; it != end; ++it) {
      ids[(*it)[1]] = (*it)[2];
    }
    const std::regex said("\\bsay(\\()\\s*(k\\w+)\\s*[,)]");
    for (std::sregex_iterator it(source.text.begin(), source.text.end(), said), end; it != end; ++it) {
      const auto id = ids.find((*it)[2]);
      if (id == ids.end()) continue;
      const char* english = englishOf(id->second);
      if (english == nullptr) continue;  // the test above says so
      const int given = argumentsOfCall(source.text, static_cast<std::size_t>(it->position(1))) - 1;
      const std::set<int> wanted = places(english);
      const int last = wanted.empty() ? 0 : *wanted.rbegin();
      EXPECT_EQ(given, last) << id->second << " in " << source.name;
      ++calls;
    }
  }
  EXPECT_GT(calls, 50u);
}

}  // namespace
}  // namespace stayalight
