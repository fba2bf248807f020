// What every plan is about, the code that holds at the site, and the fault current there.

#include <algorithm>

#include "core/code/edition.h"
#include "core/plan/field.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kFaultOfParts{"fault.series"};
constexpr RuleId kFaultCurrent{"fault.current"};

constexpr MessageId kWordPlain{"review.plan.later_word.plain"};
constexpr MessageId kWordTrade{"review.plan.later_word.trade"};
constexpr MessageId kNoMainPlain{"review.site.no_main.plain"};
constexpr MessageId kNoMainTrade{"review.site.no_main.trade"};
constexpr MessageId kSecondPlain{"review.site.second_panel.plain"};
constexpr MessageId kSecondTrade{"review.site.second_panel.trade"};
constexpr MessageId kNoBackupPlain{"review.site.no_backup.plain"};
constexpr MessageId kNoBackupTrade{"review.site.no_backup.trade"};
constexpr MessageId kCanadaPlain{"review.site.canada.plain"};
constexpr MessageId kCanadaTrade{"review.site.canada.trade"};
constexpr MessageId kEditionPlain{"review.site.edition.plain"};
constexpr MessageId kEditionTrade{"review.site.edition.trade"};
constexpr MessageId kEditionWordPlain{"review.site.edition_word.plain"};
constexpr MessageId kEditionWordTrade{"review.site.edition_word.trade"};
constexpr MessageId kAmendmentsPlain{"review.site.amendments.plain"};
constexpr MessageId kAmendmentsTrade{"review.site.amendments.trade"};
constexpr MessageId kFaultPlain{"review.site.fault_unknown.plain"};
constexpr MessageId kFaultTrade{"review.site.fault_unknown.trade"};
constexpr MessageId kPermitPlain{"review.site.permit_date.plain"};
constexpr MessageId kPermitTrade{"review.site.permit_date.trade"};
constexpr MessageId kPermitEditionPlain{"review.site.permit_edition.plain"};
constexpr MessageId kPermitEditionTrade{"review.site.permit_edition.trade"};
constexpr MessageId kFaultPanelPlain{"review.site.fault_panel.plain"};
constexpr MessageId kFaultPanelTrade{"review.site.fault_panel.trade"};
constexpr MessageId kMarkingPlain{"review.site.marking_unknown.plain"};
constexpr MessageId kMarkingTrade{"review.site.marking_unknown.trade"};
constexpr MessageId kFaultOverPlain{"review.site.fault_over.plain"};
constexpr MessageId kFaultOverTrade{"review.site.fault_over.trade"};
constexpr MessageId kRatingUnknownPlain{"review.site.interrupting_unknown.plain"};
constexpr MessageId kRatingUnknownTrade{"review.site.interrupting_unknown.trade"};

// A plan without findings must not be one that nothing could be found in.
void panelsThere(const ReviewInput& in, Findings& out) {
  if (mainPanel(in.plan) == nullptr)
    out.add("site.no_main", Severity::mustFix, {}, say(kNoMainPlain), say(kNoMainTrade),
            {at(RecordKind::site)});
  if (backupPanel(in.plan) == nullptr) {
    out.add("site.no_backup", Severity::mustFix, {}, say(kNoBackupPlain), say(kNoBackupTrade),
            {at(RecordKind::site)});
  }
  for (const PanelRole role : {PanelRole::main, PanelRole::backup}) {
    std::vector<EntityRef> places;
    std::vector<std::string> names;
    for (const auto& panel : in.plan.panels) {
      if (!panel->role.is(role)) continue;
      places.push_back(at(*panel));
      names.push_back(nameOf(*panel));
    }
    if (places.size() < 2) continue;
    out.add("site.second_panel", Severity::mustFix, {}, say(kSecondPlain, listed(names)),
            say(kSecondTrade, listed(names)), places);
  }
}

void code(const ReviewInput& in, Findings& out) {
  const Site& site = *in.plan.site;
  const std::vector<EntityRef> place{at(RecordKind::site)};
  if (canadian(in.plan)) {
    out.add("site.canada", Severity::checkOnSite, {}, say(kCanadaPlain), say(kCanadaTrade), place).basis =
        Basis::local;
    return;
  }
  if (!site.edition.known()) {
    out.add("site.edition_word", Severity::checkOnSite, {}, say(kEditionWordPlain),
            say(kEditionWordTrade, std::string(site.edition.word()), std::string(name(in.edition))), place)
        .basis = Basis::local;
  } else if (in.edition == Edition::y2026) {
    out.add("site.edition", Severity::checkOnSite, {}, say(kEditionPlain), say(kEditionTrade), place).basis =
        Basis::local;
  }
  if (site.amendments.empty()) {
    out.add("site.amendments", Severity::checkOnSite, {}, say(kAmendmentsPlain),
            say(kAmendmentsTrade, std::string(name(in.edition))), place)
        .basis = Basis::local;
  }
}

/// The year of a date as it is typed, "2026-01-20"; none where it is no such date.
std::optional<int> yearOf(const std::string& date) {
  constexpr std::string_view kShape = "0000-00-00";
  if (date.size() != kShape.size()) return std::nullopt;
  for (std::size_t i = 0; i < kShape.size(); ++i) {
    const bool digit = date[i] >= '0' && date[i] <= '9';
    if (kShape[i] == '0' ? !digit : date[i] != kShape[i]) return std::nullopt;
  }
  const int month = std::stoi(date.substr(5, 2)), day = std::stoi(date.substr(8, 2));
  if (month < 1 || month > 12 || day < 1 || day > 31) return std::nullopt;
  return std::stoi(date.substr(0, 4));
}

// The edition in force on the day of the permit counts; each comes out in the autumn before its year.
void permitDate(const ReviewInput& in, Findings& out) {
  const std::string& date = in.plan.site->permitDate;
  if (canadian(in.plan) || date.empty()) return;
  const std::optional<int> year = yearOf(date);
  const std::string edition(name(in.edition));
  const std::vector<EntityRef> place{at(RecordKind::site)};
  if (!year) {
    out.add("site.permit_date", Severity::checkOnSite, {}, say(kPermitPlain), say(kPermitTrade, date), place)
        .basis = Basis::local;
  } else if (*year < std::stoi(edition) - 1) {
    out.add("site.permit_edition", Severity::checkOnSite, {}, say(kPermitEditionPlain),
            say(kPermitEditionTrade, date, edition), place)
        .basis = Basis::local;
  }
}

/// What the breaker, or the marking of its panel, is good for.
std::optional<AcAmperes> interrupts(const Plan& plan, const Breaker& breaker) {
  if (breaker.interruptingRating) return breaker.interruptingRating;
  const Panel* panel = find(plan, breaker.panel);
  return panel != nullptr ? panel->interruptingRating : std::nullopt;
}

bool standsToday(const Plan& plan, const Panel& panel) {
  return !occupants(plan, panel.id, Reading::before).empty();
}

void faultCurrent(const ReviewInput& in, Findings& out) {
  const Panel* backup = backupPanel(in.plan);
  if (backup == nullptr || occupants(in.plan, backup->id, Reading::planned).empty()) return;
  const std::optional<AcAmperes> available = in.plan.site->availableFaultCurrent;
  if (!open(in, "site.fault_current_A").empty()) {
    out.add("site.fault_unknown", Severity::checkOnSite, kFaultCurrent, say(kFaultPlain), say(kFaultTrade),
            {at(RecordKind::site)});
  }
  if (!available) return;
  // The marking of a panel is its own, whatever its breakers are good for.
  std::vector<std::string> unmarked;
  std::vector<EntityRef> unmarkedPlaces;
  for (const auto& panel : in.plan.panels) {
    if (occupants(in.plan, panel->id, Reading::planned).empty()) continue;
    if (panel->interruptingRating && *panel->interruptingRating < *available) {
      out.add("site.fault_panel", Severity::mustFix, kFaultOfParts, say(kFaultPanelPlain, nameOf(*panel)),
              say(kFaultPanelTrade, nameOf(*panel), Figure{available->count(), "A", 0},
                  Figure{panel->interruptingRating->count(), "A", 0}),
              {at(*panel)});
    } else if (!panel->interruptingRating && standsToday(in.plan, *panel)) {
      unmarked.push_back(nameOf(*panel));
      unmarkedPlaces.push_back(at(*panel));
    }
  }
  if (!unmarked.empty()) {
    out.add("site.marking_unknown", Severity::checkOnSite, kFaultCurrent,
            say(kMarkingPlain, listed(unmarked)),
            say(kMarkingTrade, listed(unmarked), Figure{available->count(), "A", 0}), unmarkedPlaces);
  }
  std::vector<std::string> unknown;
  std::vector<EntityRef> places;
  for (const auto& breaker : in.plan.breakers) {
    const Panel* panel = find(in.plan, breaker->panel);
    if (panel == nullptr || !stands(*breaker, Reading::planned)) continue;
    const std::optional<AcAmperes> rating = interrupts(in.plan, *breaker);
    if (rating && *rating < *available) {
      out.add("site.fault_over", Severity::mustFix, kFaultCurrent,
              say(kFaultOverPlain, nameOf(*panel), spacesOf(in.plan, *breaker)),
              say(kFaultOverTrade, nameOf(*panel), spacesOf(in.plan, *breaker),
                  Figure{available->count(), "A", 0}, Figure{rating->count(), "A", 0}),
              {at(*breaker)});
    } else if (!rating && breaker->stage.is(Stage::fresh)) {
      unknown.push_back(spacesOf(in.plan, *breaker));
      places.push_back(at(*breaker));
    }
  }
  if (!unknown.empty()) {
    out.add("site.interrupting_unknown", Severity::checkOnSite, kFaultCurrent, say(kRatingUnknownPlain),
            say(kRatingUnknownTrade, listed(unknown), Figure{available->count(), "A", 0}), places);
  }
}

// A word of a later program is kept in the file, and the figures take the first choice of the field for it.
void laterWords(const ReviewInput& in, Findings& out, RecordKind kind, const void* record, EntityRef place) {
  const RecordType& type = recordType(kind);
  for (const Field& field : type.fields) {
    if (field.kind == FieldKind::identity) place = {kind, std::get<std::int64_t>(field.get(record))};
    if (field.kind != FieldKind::choice || field.help == "field.site.code_edition") continue;
    const FieldValue value = field.get(record);
    const auto* word = std::get_if<std::string>(&value);
    if (word == nullptr ||
        std::find(field.choices.begin(), field.choices.end(), *word) != field.choices.end())
      continue;
    out.add("plan.later_word", Severity::mustFix, {},
            say(kWordPlain, std::vector<Message>{say(MessageId{field.help})}),
            say(kWordTrade, std::vector<Message>{say(MessageId{field.help})}, *word), {place});
  }
  for (const Children& list : type.children) {
    if (list.kind == RecordKind::ownLists) continue;
    for (std::size_t i = 0; i < list.count(record); ++i) {
      const EntityRef inside = list.single ? EntityRef{list.kind}
                               : isRow(list.kind)
                                   ? EntityRef{list.kind, place.id, static_cast<std::int32_t>(i)}
                                   : place;
      laterWords(in, out, list.kind, list.at(record, i), inside);
    }
  }
}
void wordsOfALaterProgram(const ReviewInput& in, Findings& out) {
  laterWords(in, out, RecordKind::plan, &in.plan, {RecordKind::plan});
}

constexpr Rule kRules[] = {wordsOfALaterProgram, panelsThere, code, permitDate, faultCurrent};

}  // namespace

std::span<const Rule> siteRules() { return kRules; }

}  // namespace stayalight::reviewing
