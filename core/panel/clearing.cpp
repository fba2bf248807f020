#include "core/panel/clearing.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/panel/names.h"

namespace stayalight {
namespace {

constexpr MessageId kNoTwoSpaces{"panel.clearing.no_two_spaces"};
constexpr MessageId kNothingFree{"panel.clearing.nothing_free"};
constexpr MessageId kStays{"panel.clearing.stays"};
constexpr MessageId kOut{"panel.clearing.out"};
constexpr MessageId kOutDark{"panel.clearing.out_dark"};
constexpr MessageId kLift{"panel.clearing.lift"};
constexpr MessageId kSet{"panel.clearing.set"};
constexpr MessageId kProposed{"panel.clearing.proposed"};
constexpr MessageId kCircuits{"panel.clearing.circuits"};
constexpr MessageId kBypass{"panel.by_bypass"};

constexpr std::int32_t kFeederPoles = 2;

bool overlap(const Placement& one, const Placement& other) {
  const std::vector<HalfSpace> mine = coveredHalves(one);
  const std::vector<HalfSpace> theirs = coveredHalves(other);
  return std::any_of(mine.begin(), mine.end(), [&](const HalfSpace& half) {
    return std::find(theirs.begin(), theirs.end(), half) != theirs.end();
  });
}

/// What becomes of a breaker that stands in the panel today.
struct Fate {
  BreakerId breaker;
  Placement place;
  bool stays = false;           ///< where it is, as planned
  bool feedsNothing = false;    ///< no circuit hangs on it as planned: it may come out
  std::optional<Placement> to;  ///< another place in this panel
  std::vector<CircuitId> circuits;
  std::vector<CircuitId> leaving;  ///< that go to another panel
};

std::vector<Fate> fatesOf(const Plan& plan, PanelId panel) {
  std::vector<Fate> all;
  for (const Occupant& occupant : occupants(plan, panel, Reading::before)) {
    const Breaker& breaker = *find(plan, occupant.breaker);
    Fate fate;
    fate.breaker = occupant.breaker;
    fate.place = occupant.placement;
    fate.stays = stands(breaker, Reading::planned);
    const bool plain = breaker.feeds.is(Feeds::circuit) || breaker.feeds.is(Feeds::nothing);
    fate.feedsNothing = plain && circuitsOn(plan, breaker.id, Reading::planned).empty();
    fate.circuits = circuitsOn(plan, breaker.id, Reading::before);
    for (const CircuitId id : fate.circuits) {
      const Breaker* next = find(plan, find(plan, id)->planned);
      if (next == nullptr || next->id == breaker.id) continue;
      if (next->panel != panel) {
        fate.leaving.push_back(id);
      } else if (!fate.stays) {
        fate.to = placementOf(*next);
      }
    }
    all.push_back(std::move(fate));
  }
  return all;
}

/// The panel while the work goes on.
class Work {
 public:
  Work(std::vector<Fate> fates, bool supplied) : fates_(std::move(fates)), supplied_(supplied) {
    state_.resize(fates_.size(), State::stands);
    for (const Fate& fate : fates_) where_.push_back(fate.place);
  }

  /// Everything out of the way of a placement, with its steps. False where something stays there.
  bool clear(const Placement& wanted, std::vector<ClearingStep>& steps) {
    for (std::size_t i = 0; i < fates_.size(); ++i) {
      if (state_[i] == State::out || state_[i] == State::lifted || !overlap(wanted, where_[i])) continue;
      if (!move(i, steps)) return false;
    }
    return true;
  }
  void set(bool supplies) { supplied_ = supplied_ || supplies; }

  [[nodiscard]] std::size_t size() const { return fates_.size(); }
  /// Those that stand in a placement now, by their place in the list.
  [[nodiscard]] std::vector<std::size_t> under(const Placement& place) const {
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < fates_.size(); ++i) {
      if (state_[i] != State::out && state_[i] != State::lifted && overlap(place, where_[i]))
        all.push_back(i);
    }
    return all;
  }
  /// Circuits that lose their supply when it goes, at least.
  [[nodiscard]] std::size_t darkOf(std::size_t i) const { return supplied_ ? 0 : fates_[i].leaving.size(); }

  /// Another fate for one that the plan leaves where it is.
  void propose(BreakerId breaker, std::optional<Placement> to) {
    for (std::size_t i = 0; i < fates_.size(); ++i) {
      if (fates_[i].breaker != breaker) continue;
      fates_[i].stays = false;
      fates_[i].to = to;
      proposed_.push_back(breaker);
    }
  }

 private:
  enum class State : std::uint8_t { stands, moving, lifted, out, moved };

  bool move(std::size_t i, std::vector<ClearingStep>& steps) {
    const Fate& fate = fates_[i];
    ClearingStep step;
    step.breaker = fate.breaker;
    step.proposed = std::find(proposed_.begin(), proposed_.end(), fate.breaker) != proposed_.end();
    if (state_[i] == State::moved || fate.stays) return false;
    if (state_[i] == State::moving) {
      // Whoever waits for this place is in the way itself.
      state_[i] = State::lifted;
      step.what = Clearing::lifted;
      step.dark = fate.circuits;
      steps.push_back(std::move(step));
      return true;
    }
    if (!fate.to) {
      state_[i] = State::out;
      step.what = Clearing::takenOut;
      if (!supplied_) step.dark = fate.leaving;
      steps.push_back(std::move(step));
      return true;
    }
    state_[i] = State::moving;
    const Placement to = *fate.to;
    for (std::size_t other = 0; other < fates_.size(); ++other) {
      if (other == i || state_[other] == State::out || state_[other] == State::lifted) continue;
      if (overlap(to, where_[other]) && !move(other, steps)) return false;
    }
    state_[i] = State::moved;
    where_[i] = to;
    step.what = Clearing::relocated;
    step.to = to;
    // A circuit of a shared breaker that goes to another panel meanwhile.
    if (!supplied_) step.dark = fate.leaving;
    steps.push_back(std::move(step));
    return true;
  }

  std::vector<Fate> fates_;
  std::vector<Placement> where_;
  std::vector<State> state_;
  std::vector<BreakerId> proposed_;
  bool supplied_;
};

std::size_t darkIn(const std::vector<ClearingStep>& steps) {
  std::size_t count = 0;
  for (const ClearingStep& step : steps) count += step.dark.size();
  return count;
}

/// Looks for two adjacent spaces of a column.
class Search {
 public:
  /// `taken`: places found before that the plan does not have yet.
  Search(const Plan& plan, const Panel& panel, const Work& work, std::vector<Placement> taken)
      : plan_(plan),
        panel_(panel),
        work_(work),
        planned_(occupants(plan, panel.id, Reading::planned)),
        taken_(std::move(taken)) {
    for (std::size_t i = 0; i < planned_.size(); ++i) {
      for (const HalfSpace& half : coveredHalves(planned_[i].placement)) holds_.emplace(half, i);
    }
  }

  ClearedPlace best() {
    for (const SpacePosition position : allSpaces(panel_)) tryAt(position);
    if (!found_.place) {
      found_.refusal = adjacent_ ? say(kNothingFree, panel_.name) : say(kNoTwoSpaces, panel_.name);
    }
    return found_;
  }
  /// Whose fate the place found asks for.
  [[nodiscard]] const std::vector<std::pair<BreakerId, std::optional<Placement>>>& proposals() const {
    return proposals_;
  }

 private:
  using Proposals = std::vector<std::pair<BreakerId, std::optional<Placement>>>;
  /// Relocations proposed, breakers proposed to come out, circuits without supply, steps.
  using Cost = std::tuple<std::size_t, std::size_t, std::size_t, std::size_t>;

  /// A place for one that keeps its circuits, who stands there, and which of them the plan leaves although
  /// they feed nothing.
  struct Candidate {
    Placement to;
    std::vector<std::size_t> under;
    std::vector<BreakerId> spares;
  };
  /// How many come out that the plan leaves, what is sure to be dark, how many steps there are at least.
  struct Bound {
    std::size_t out = 0, dark = 0, steps = 0;
  };

  /// Nothing but a spare that may come out.
  [[nodiscard]] bool isTaken(const Placement& place) const {
    return std::any_of(taken_.begin(), taken_.end(),
                       [&](const Placement& other) { return overlap(place, other); });
  }
  [[nodiscard]] bool spare(BreakerId id) const {
    const Breaker& breaker = *find(plan_, id);
    const bool plain = breaker.feeds.is(Feeds::circuit) || breaker.feeds.is(Feeds::nothing);
    return plain && !breaker.stage.is(Stage::fresh) && circuitsOn(plan_, id, Reading::planned).empty();
  }

  void tryAt(SpacePosition position) {
    const Placement place{panel_.id, position, Half::whole, kFeederPoles};
    if (isTaken(place)) return;
    std::vector<BreakerId> inTheWay;
    for (const Occupant& occupant : planned_) {
      if (overlap(place, occupant.placement)) inTheWay.push_back(occupant.breaker);
    }
    if (refusal(plan_, place, inTheWay)) return;
    adjacent_ = true;
    std::vector<BreakerId> keep;
    Proposals proposals;
    for (const BreakerId id : inTheWay) {
      const Breaker& breaker = *find(plan_, id);
      const bool plain = breaker.feeds.is(Feeds::circuit) || breaker.feeds.is(Feeds::nothing);
      if (!plain || breaker.stage.is(Stage::fresh)) return;
      if (spare(id)) {
        proposals.emplace_back(id, std::nullopt);
      } else {
        keep.push_back(id);
      }
    }
    // One that is better than what was found so far is not possible any more.
    if (found_.place && keep.size() > std::get<0>(cost_)) return;
    candidates_.clear();
    for (const BreakerId id : keep) candidates_.push_back(candidatesFor(id, place, inTheWay));
    counted_.assign(work_.size(), 0);
    Bound bound;
    bound.out = proposals.size();
    count(work_.under(place), bound);
    relocate(place, keep, 0, proposals, bound);
  }

  // Places that are free, or hold spares; those first where the fewest come out, then lose their supply.
  [[nodiscard]] std::vector<Candidate> candidatesFor(BreakerId breaker, const Placement& place,
                                                     const std::vector<BreakerId>& inTheWay) const {
    const Placement now = placementOf(*find(plan_, breaker));
    const std::vector<Half> halves = now.half == Half::whole ? std::vector{Half::whole}
                                     : now.poles == 2        ? std::vector{Half::outer, Half::inner}
                                                             : std::vector{Half::a, Half::b};
    using Order = std::tuple<std::size_t, std::size_t, std::size_t>;
    std::vector<std::pair<Order, Candidate>> all;
    for (const SpacePosition position : allSpaces(panel_)) {
      for (const Half half : halves) {
        Candidate candidate{{panel_.id, position, half, now.poles}, {}, {}};
        if (!freeButForSpares(candidate, inTheWay) || overlap(candidate.to, place) || isTaken(candidate.to))
          continue;
        std::vector<BreakerId> away = inTheWay;
        away.insert(away.end(), candidate.spares.begin(), candidate.spares.end());
        if (refusal(plan_, candidate.to, away)) continue;
        candidate.under = work_.under(candidate.to);
        std::size_t dark = 0;
        for (const std::size_t i : candidate.under) dark += work_.darkOf(i);
        all.emplace_back(Order{candidate.spares.size(), dark, candidate.under.size()}, std::move(candidate));
      }
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Candidate> sorted;
    sorted.reserve(all.size());
    for (auto& [order, candidate] : all) sorted.push_back(std::move(candidate));
    return sorted;
  }
  [[nodiscard]] bool freeButForSpares(Candidate& candidate, const std::vector<BreakerId>& inTheWay) const {
    for (const HalfSpace& half : coveredHalves(candidate.to)) {
      const auto [from, to] = holds_.equal_range(half);
      for (auto at = from; at != to; ++at) {
        const BreakerId id = planned_[at->second].breaker;
        auto& spares = candidate.spares;
        if (std::find(inTheWay.begin(), inTheWay.end(), id) != inTheWay.end() ||
            std::find(spares.begin(), spares.end(), id) != spares.end())
          continue;
        if (!spare(id)) return false;
        spares.push_back(id);
      }
    }
    return true;
  }

  // Adds who is not counted yet.
  void count(const std::vector<std::size_t>& under, Bound& bound) {
    for (const std::size_t i : under) {
      if (counted_[i]++ > 0) continue;
      bound.dark += work_.darkOf(i);
      ++bound.steps;
    }
  }
  void uncount(const std::vector<std::size_t>& under) {
    for (const std::size_t i : under) --counted_[i];
  }

  // Places for each that keeps its circuits: all of them are looked at, but for what cannot be better than
  // the best so far.
  void relocate(const Placement& place, const std::vector<BreakerId>& keep, std::size_t next,
                Proposals& proposals, const Bound& bound) {
    if (found_.place && Cost{keep.size(), bound.out, bound.dark, bound.steps} >= cost_) return;
    if (next == keep.size()) {
      consider(place, proposals);
      return;
    }
    for (const Candidate& candidate : candidates_[next]) {
      if (taken(candidate.to, proposals)) continue;
      Bound with = bound;
      count(candidate.under, with);
      const std::size_t before = proposals.size();
      for (const BreakerId id : candidate.spares) {
        const bool proposed = std::any_of(proposals.begin(), proposals.end(),
                                          [&](const auto& other) { return other.first == id; });
        if (!proposed) proposals.emplace_back(id, std::nullopt);
      }
      with.out += proposals.size() - before;
      proposals.emplace_back(keep[next], candidate.to);
      relocate(place, keep, next + 1, proposals, with);
      proposals.resize(before);
      uncount(candidate.under);
    }
  }
  static bool taken(const Placement& to, const Proposals& proposals) {
    return std::any_of(proposals.begin(), proposals.end(),
                       [&](const auto& other) { return other.second && overlap(to, *other.second); });
  }

  // Nothing where something else stays in the way.
  void consider(const Placement& place, const Proposals& proposals) {
    Work work = work_;
    std::size_t relocated = 0;
    for (const auto& [breaker, to] : proposals) {
      work.propose(breaker, to);
      relocated += to ? 1 : 0;
    }
    std::vector<ClearingStep> steps;
    if (!work.clear(place, steps)) return;
    const Cost cost{relocated, proposals.size() - relocated, darkIn(steps), steps.size()};
    if (found_.place && cost >= cost_) return;
    cost_ = cost;
    found_.place = place;
    found_.steps = std::move(steps);
    proposals_ = proposals;
  }

  const Plan& plan_;
  const Panel& panel_;
  const Work& work_;
  std::vector<Occupant> planned_;
  std::vector<Placement> taken_;
  std::multimap<HalfSpace, std::size_t> holds_;  ///< which of them cover a half of a space
  bool adjacent_ = false;
  ClearedPlace found_;
  Cost cost_{};
  Proposals proposals_;
  std::vector<std::vector<Candidate>> candidates_;  ///< by who keeps its circuits
  std::vector<int> counted_;                        ///< how often each stands under what is chosen
};

/// With it the backup subpanel can be fed.
bool suppliesBackup(const Plan& plan, const Breaker& breaker) {
  const Panel* backup = backupPanel(plan);
  if (backup == nullptr) return false;
  if (breaker.feeds.is(Feeds::feeder)) return breaker.feedsPanel == backup->id;
  return breaker.feeds.is(Feeds::inverterInput) &&
         plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
}

// What has to be set in the panel, what feeds the backup subpanel first.
std::vector<const Breaker*> toBeSet(const Plan& plan, PanelId panel) {
  std::vector<const Breaker*> all;
  for (const auto& breaker : plan.breakers) {
    const bool plain = breaker->feeds.is(Feeds::circuit) || breaker->feeds.is(Feeds::nothing);
    if (breaker->panel == panel && breaker->stage.is(Stage::fresh) && !plain) all.push_back(&*breaker);
  }
  std::stable_sort(all.begin(), all.end(), [&](const Breaker* a, const Breaker* b) {
    return suppliesBackup(plan, *a) && !suppliesBackup(plan, *b);
  });
  return all;
}

bool suppliedAlready(const Plan& plan) {
  return std::any_of(plan.breakers.begin(), plan.breakers.end(), [&](const auto& breaker) {
    return !breaker->stage.is(Stage::fresh) && stands(*breaker, Reading::planned) &&
           suppliesBackup(plan, *breaker);
  });
}
bool anySupply(const Plan& plan) {
  return std::any_of(plan.breakers.begin(), plan.breakers.end(), [&](const auto& breaker) {
    return stands(*breaker, Reading::planned) && suppliesBackup(plan, *breaker);
  });
}

/// The bypass of a pass-through inverter has a breaker of its own ahead.
bool lacksBypass(const Plan& plan) {
  return plan.transfer->arrangement.is(Arrangement::inverterPassThrough) &&
         plan.transfer->bypass.is(Answer::yes) &&
         std::none_of(plan.breakers.begin(), plan.breakers.end(),
                      [&](const auto& breaker) { return feedsBypass(plan, *breaker); });
}

std::string listed(const std::vector<std::string>& names) {
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

}  // namespace

const Panel* panelAhead(const Plan& plan) {
  const Panel* backup = backupPanel(plan);
  const Panel* ahead = backup != nullptr ? find(plan, backup->fedFrom) : nullptr;
  return ahead != nullptr ? ahead : mainPanel(plan);
}

bool feedsBypass(const Plan& plan, const Breaker& breaker) {
  const Panel* backup = backupPanel(plan);
  if (backup == nullptr || !plan.transfer->arrangement.is(Arrangement::inverterPassThrough) ||
      !stands(breaker, Reading::planned) || !breaker.feeds.is(Feeds::feeder) ||
      breaker.feedsPanel != backup->id)
    return false;
  return std::any_of(plan.breakers.begin(), plan.breakers.end(), [](const auto& other) {
    return other->feeds.is(Feeds::inverterInput) && stands(*other, Reading::planned);
  });
}

Message nameOf(const Plan& plan, const ClearedPlace& place) {
  if (place.bypass) return say(kBypass);
  if (const Breaker* breaker = find(plan, place.breaker))
    return feedsInSentence(breaker->feeds.valueOr(Feeds::nothing));
  const bool passThrough = plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  return feedsInSentence(passThrough ? Feeds::inverterInput : Feeds::feeder);
}

Message instruction(const Plan& plan, const ClearingStep& step) {
  const Breaker& breaker = *find(plan, step.breaker);
  const Panel& panel = *find(plan, breaker.panel);
  std::vector<std::string> names;
  for (const CircuitId id : circuitsOn(plan, step.breaker, Reading::before)) {
    const Circuit& circuit = *find(plan, id);
    names.push_back(circuit.name.empty() ? circuit.serves : circuit.name);
  }
  const Message what = names.empty() ? feedsInSentence(Feeds::nothing) : say(kCircuits, listed(names));
  const std::string from = spaceNames(panel, placementOf(breaker));
  Message said;
  switch (step.what) {
    case Clearing::takenOut:
      said = say(step.dark.empty() ? kOut : kOutDark, std::vector<Message>{what}, from);
      break;
    case Clearing::lifted:
      said = say(kLift, std::vector<Message>{what}, from);
      break;
    case Clearing::relocated:
      said = say(kSet, std::vector<Message>{what}, from, spaceNames(panel, *step.to));
      break;
  }
  return step.proposed ? say(kProposed, std::vector<Message>{said}) : said;
}

std::vector<ClearedPlace> clearedPlaces(const Plan& plan, PanelId id) {
  std::vector<ClearedPlace> all;
  const Panel* panel = find(plan, id);
  const Panel* backup = backupPanel(plan);
  if (panel == nullptr || backup == nullptr || panel->id == backup->id) return all;
  Work work(fatesOf(plan, id), suppliedAlready(plan));

  const Panel* ahead = panelAhead(plan);
  const bool wanted = ahead != nullptr && ahead->id == id &&
                      !plan.transfer->arrangement.is(Arrangement::none) &&
                      std::any_of(plan.circuits.begin(), plan.circuits.end(),
                                  [&](const auto& circuit) { return backedUp(plan, *circuit); });
  std::vector<Placement> taken;
  const auto findRoom = [&](bool bypass) {
    Search search(plan, *panel, work, taken);
    ClearedPlace found = search.best();
    found.supplies = true;
    found.bypass = bypass;
    if (found.place) {
      for (const auto& [breaker, to] : search.proposals()) work.propose(breaker, to);
      std::vector<ClearingStep> again;
      (void)work.clear(*found.place, again);
      work.set(true);
      taken.push_back(*found.place);
      for (const auto& [breaker, to] : search.proposals()) {
        if (to) taken.push_back(*to);
      }
    }
    all.push_back(std::move(found));
  };
  if (wanted && !anySupply(plan)) findRoom(false);
  for (const Breaker* breaker : toBeSet(plan, id)) {
    ClearedPlace cleared;
    cleared.breaker = breaker->id;
    cleared.supplies = suppliesBackup(plan, *breaker);
    cleared.bypass = feedsBypass(plan, *breaker);
    const Placement place = placementOf(*breaker);
    Work tried = work;
    if (!occupantOf(plan, place, Reading::planned, {breaker->id}).valid() &&
        tried.clear(place, cleared.steps)) {
      cleared.place = place;
      work = std::move(tried);
      work.set(cleared.supplies);
    } else {
      cleared.steps.clear();
      cleared.refusal = say(kStays, spaceNames(*panel, place));
    }
    all.push_back(std::move(cleared));
  }
  if (wanted && lacksBypass(plan)) findRoom(true);
  return all;
}

}  // namespace stayalight
