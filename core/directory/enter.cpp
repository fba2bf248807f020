#include <algorithm>

#include "core/directory/directory.h"

namespace stayalight {
namespace {

constexpr MessageId kAdded{"directory.added"};
constexpr MessageId kAddedWithoutRating{"directory.added_without_rating"};
constexpr MessageId kAddedNoted{"directory.added_noted"};
constexpr MessageId kSpare{"directory.spare"};
constexpr MessageId kEmpty{"directory.empty"};
constexpr MessageId kAlready{"directory.already"};
constexpr MessageId kOtherThere{"directory.other_there"};
constexpr MessageId kBreakerThere{"directory.breaker_there"};
constexpr MessageId kNoSuchSpace{"directory.no_such_space"};
constexpr MessageId kNotAbove{"directory.not_above"};
constexpr MessageId kNoPanel{"panel.no_such_panel"};

/// Where an entry stands; a message where the panel has no such place.
Result<Placement> placeOf(const Panel& panel, const DirectoryEntry& entry) {
  std::vector<SpacePosition> positions;
  for (const std::string& number : entry.spaces) {
    const auto position = spaceNumbered(panel, number);
    if (!position) return say(kNoSuchSpace, number, panel.name);
    positions.push_back(*position);
  }
  std::sort(positions.begin(), positions.end());
  if (positions.size() == 2 &&
      (positions[0].column != positions[1].column || positions[1].row != positions[0].row + 1)) {
    return say(kNotAbove, entry.spaces[0], entry.spaces[1]);
  }
  return Placement{panel.id, positions.front(), entry.half, entry.poles.value_or(1)};
}

const Breaker* standingAt(const Plan& plan, const Placement& place) {
  const BreakerId planned = occupantOf(plan, place, Reading::planned, {});
  return find(plan, planned.valid() ? planned : occupantOf(plan, place, Reading::before, {}));
}

const Circuit* circuitAt(const Plan& plan, BreakerId breaker) {
  const Circuit* today = circuitOn(plan, breaker, Reading::before);
  return today != nullptr ? today : circuitOn(plan, breaker, Reading::planned);
}

struct Entered {
  DirectoryDone done = DirectoryDone::refused;
  Message said;
};

class Entering {
 public:
  Entering(Plan& plan, const Panel& panel) : plan_(plan), panel_(panel) {}

  Entered enter(const DirectoryEntry& entry) {
    const Result<Placement> place = placeOf(panel_, entry);
    if (!place) return {DirectoryDone::refused, place.refusal()};
    const Breaker* there = standingAt(plan_, place.value());
    if (entry.use == DirectoryUse::empty) {
      if (there != nullptr) return {DirectoryDone::nothingToAdd, say(kBreakerThere)};
      return {DirectoryDone::nothingToAdd, say(kEmpty)};
    }
    if (there != nullptr) return onBreaker(entry, place.value(), *there);
    const RatingAmperes rating = entry.rating.value_or(kRatingNotRead);
    Result<Plan> after =
        entry.use == DirectoryUse::spare
            ? addBreaker(plan_, place.value(), rating, Feeds::nothing)
            : addCircuit(plan_, panel_.id, place.value(), place.value().poles, rating, entry.name);
    return take(entry, std::move(after));
  }

 private:
  Entered take(const DirectoryEntry& entry, Result<Plan> after) {
    if (after && entry.use == DirectoryUse::circuit && !entry.serves.empty()) {
      const EntityRef circuit{RecordKind::circuit, after.value().circuits.back()->id.number};
      after = setField(after.value(), circuit, "serves", entry.serves);
    }
    const bool fresh = after && after.value().breakers.size() > plan_.breakers.size();
    if (fresh && !entry.rating) {
      const EntityRef breaker{RecordKind::breaker, after.value().breakers.back()->id.number};
      after = setField(after.value(), breaker, "rating_read", std::string("unknown"));
    }
    if (!after) return {DirectoryDone::refused, after.refusal()};
    plan_ = std::move(after).value();
    if (entry.use == DirectoryUse::spare) return {DirectoryDone::added, say(kSpare)};
    if (entry.note) return {DirectoryDone::added, say(kAddedNoted, std::vector<Message>{*entry.note})};
    if (!entry.rating)
      return {DirectoryDone::added, say(kAddedWithoutRating, std::int64_t{kRatingNotRead.count()})};
    return {DirectoryDone::added, say(kAdded)};
  }

  // A breaker that feeds nothing yet takes the circuit; one that feeds something keeps it.
  Entered onBreaker(const DirectoryEntry& entry, const Placement& place, const Breaker& there) {
    const bool same = placementOf(there) == place;
    const Circuit* circuit = circuitAt(plan_, there.id);
    if (circuit != nullptr) {
      const bool known = circuit->name == entry.name || circuit->serves == entry.name;
      if (same && known) return {DirectoryDone::alreadyThere, say(kAlready)};
      return {DirectoryDone::refused, say(kOtherThere, circuit->name)};
    }
    if (same && there.feeds.is(Feeds::nothing)) {
      if (entry.use == DirectoryUse::spare) return {DirectoryDone::alreadyThere, say(kAlready)};
      return take(entry, addCircuitOn(plan_, there.id, entry.name));
    }
    const auto reason = refusal(plan_, place, {});
    return {DirectoryDone::refused, reason.value_or(say(kBreakerThere))};
  }

  Plan& plan_;
  const Panel panel_;
};

}  // namespace

EnteredDirectory enterDirectory(const Plan& plan, PanelId panel, const std::vector<DirectoryLine>& lines) {
  EnteredDirectory out{plan, {}, 0};
  const Panel* record = find(plan, panel);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const DirectoryLine& line = lines[i];
    if (line.notRead) out.outcomes.push_back({i, 0, DirectoryDone::refused, *line.notRead});
    for (std::size_t entry = 0; entry < line.entries.size(); ++entry) {
      if (record == nullptr) {
        out.outcomes.push_back({i, entry, DirectoryDone::refused, say(kNoPanel)});
        continue;
      }
      const Entered entered = Entering(out.plan, *record).enter(line.entries[entry]);
      if (entered.done == DirectoryDone::added) ++out.added;
      out.outcomes.push_back({i, entry, entered.done, entered.said});
    }
  }
  return out;
}

}  // namespace stayalight
