// Words of a directory. NFPA 70 408.4(A) asks for a clear and specific purpose, no names of people and
// nothing that changes with who lives there; which words are vague is common practice, no source.

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <vector>

#include "core/review/review.h"

namespace stayalight {
namespace {

constexpr MessageId kEmpty{"review.directory.empty"};
constexpr MessageId kVague{"review.directory.vague"};
constexpr MessageId kGuess{"review.directory.guess"};
constexpr MessageId kPerson{"review.directory.person"};
constexpr MessageId kPassing{"review.directory.passing_use"};
constexpr MessageId kMovedTo{"review.directory.moved_to"};

// Say nothing by themselves: with a place or a thing beside them they may stand.
constexpr std::array kSayNothing = {
    "plug",       "plugs",  "outlet",    "outlets",    "receptacle", "receptacles", "recepts",  "recept",
    "light",      "lights", "lighting",  "lts",        "general",    "circuit",     "circuits", "breaker",
    "power",      "spare",  "load",      "loads",      "room",       "rooms",       "bedroom",  "bedrooms",
    "house",      "home",   "appliance", "appliances", "switch",     "switches",    "wall",     "walls",
    "some",       "more",   "new",       "old",        "all",        "and",         "or",       "the",
    "a",          "for",    "of",        "in",         "other",      "others",      "side",     "upstairs",
    "downstairs", "up",     "down"};
// Spoil an entry wherever they stand.
constexpr std::array kAlwaysVague = {"misc",     "miscellaneous", "various",   "stuff",
                                     "things",   "unknown",       "mystery",   "etc",
                                     "whatever", "assorted",      "unlabeled", "unlabelled"};
// Uses of a room that pass with who lives there.
constexpr std::array kPassingUse = {
    "baby",        "babies",   "nursery",  "kid",       "kids",    "child",   "children",
    "son",         "sons",     "daughter", "daughters", "grandma", "grandpa", "grandmother",
    "grandfather", "mom",      "mum",      "dad",       "mother",  "father",  "teen",
    "teens",       "teenager", "twins",    "tenant",    "tenants", "renter",  "nanny",
    "roommate",    "inlaw",    "inlaws",   "boys",      "girls",   "boy",     "girl"};
// Given names that mean nothing else on a panel.
constexpr std::array kPeople = {
    "james",    "robert",    "john",        "michael",  "david",     "william",  "richard",   "joseph",
    "thomas",   "charles",   "christopher", "daniel",   "matthew",   "anthony",  "steven",    "paul",
    "andrew",   "joshua",    "kenneth",     "kevin",    "brian",     "george",   "timothy",   "ronald",
    "edward",   "jason",     "jeffrey",     "ryan",     "jacob",     "gary",     "nicholas",  "eric",
    "jonathan", "stephen",   "larry",       "justin",   "scott",     "brandon",  "benjamin",  "samuel",
    "gregory",  "alexander", "patrick",     "jack",     "dennis",    "jerry",    "tyler",     "aaron",
    "peter",    "henry",     "noah",        "liam",     "ethan",     "lucas",    "mary",      "patricia",
    "jennifer", "linda",     "elizabeth",   "barbara",  "susan",     "jessica",  "sarah",     "karen",
    "lisa",     "nancy",     "betty",       "sandra",   "margaret",  "ashley",   "kimberly",  "emily",
    "donna",    "michelle",  "carol",       "amanda",   "melissa",   "deborah",  "stephanie", "rebecca",
    "laura",    "sharon",    "cynthia",     "kathleen", "amy",       "angela",   "shirley",   "anna",
    "brenda",   "pamela",    "emma",        "nicole",   "helen",     "samantha", "katherine", "christine",
    "debra",    "rachel",    "carolyn",     "janet",    "maria",     "olivia",   "heather",   "diane",
    "julie",    "joyce",     "victoria",    "kelly",    "christina", "joan",     "evelyn",    "lauren",
    "judith",   "megan",     "andrea",      "hannah",   "sophia",    "isabella", "mia",       "tom",
    "mike",     "dave",      "bob",         "jim",      "joe",       "steve",    "dan",       "chris",
    "matt",     "tim",       "ben",         "sam",      "tony",      "kate",     "jane",      "ann",
    "anne",     "sue",       "jen",         "liz",      "beth"};

template <class List>
bool has(const List& list, std::string_view word) {
  return std::any_of(list.begin(), list.end(), [&](std::string_view entry) { return entry == word; });
}

struct Word {
  std::string letters;      ///< lower case
  bool possessive = false;  ///< ended in 's or s'
};

/// Words of letters; an apostrophe of either kind marks a possessive and ends nothing.
std::vector<Word> wordsOf(std::string_view text) {
  std::string plain(text);
  for (std::size_t at = plain.find("\xE2\x80\x99"); at != std::string::npos; at = plain.find("\xE2\x80\x99"))
    plain.replace(at, 3, "'");
  std::vector<Word> words;
  Word word;
  const auto finish = [&] {
    if (!word.letters.empty()) words.push_back(word);
    word = {};
  };
  for (std::size_t i = 0; i < plain.size(); ++i) {
    const auto c = static_cast<unsigned char>(plain[i]);
    if (std::isalpha(c) != 0 || c >= 0x80) {
      word.letters += static_cast<char>(std::tolower(c));
      continue;
    }
    const auto letterAt = [&](std::size_t k) {
      return k < plain.size() && std::isalpha(static_cast<unsigned char>(plain[k])) != 0;
    };
    if (c == '\'' && !word.letters.empty()) {
      const bool apostropheS =
          i + 1 < plain.size() && (plain[i + 1] == 's' || plain[i + 1] == 'S') && !letterAt(i + 2);
      const bool plural = word.letters.back() == 's' && !letterAt(i + 1);
      if (apostropheS || plural) {
        word.possessive = true;
        if (apostropheS) ++i;
        finish();
        continue;
      }
    }
    finish();
  }
  finish();
  return words;
}

}  // namespace

std::optional<Message> directoryFault(std::string_view text) {
  const std::vector<Word> words = wordsOf(text);
  const std::string written(text);
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return say(kEmpty);
  if (text.find('?') != std::string_view::npos) return say(kGuess, written);
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (words[i].letters == "moved" && words[i + 1].letters == "to") return say(kMovedTo, written);
  }
  for (const Word& word : words) {
    if (has(kPassingUse, word.letters)) return say(kPassing, written);
  }
  for (const Word& word : words) {
    if (word.possessive || has(kPeople, word.letters)) return say(kPerson, written);
  }
  const bool spoilt =
      std::any_of(words.begin(), words.end(), [](const Word& w) { return has(kAlwaysVague, w.letters); });
  const bool numbered = std::any_of(text.begin(), text.end(),
                                    [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; });
  const bool room = std::any_of(words.begin(), words.end(),
                                [](const Word& w) { return w.letters == "bedroom" || w.letters == "room"; });
  // "Bedroom 2 lights" names its place by a number; "lights 2" does not.
  const bool nothing = std::all_of(words.begin(), words.end(), [](const Word& w) {
    return has(kSayNothing, w.letters) || w.letters.size() < 2;
  });
  if (spoilt || (nothing && !(numbered && room))) return say(kVague, written);
  return std::nullopt;
}

}  // namespace stayalight
