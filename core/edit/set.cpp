// One field, one item of a list, one offered repair.

#include "core/edit/parts.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoSuchThing{"edit.no_such_record"};
constexpr MessageId kNoField{"edit.no_such_field"};
constexpr MessageId kIdStays{"edit.id_stays"};
constexpr MessageId kNoEntity{"edit.no_such_id"};
constexpr MessageId kBreakerNeedsPanel{"edit.breaker_needs_panel"};
constexpr MessageId kStoodThere{"edit.stood_there_before"};
constexpr MessageId kCutsOff{"edit.cuts_off_breaker"};
constexpr MessageId kStillFeeds{"edit.still_feeds"};
constexpr MessageId kNotStanding{"edit.breaker_does_not_stand"};
constexpr MessageId kFeedsOther{"edit.breaker_feeds_other"};
constexpr MessageId kFedInCircle{"edit.fed_in_circle"};
constexpr MessageId kFeedsItself{"edit.feeds_itself"};
constexpr MessageId kNoSuchSpace{"panel.no_such_space"};
constexpr MessageId kSpaceTwice{"edit.space_twice"};
constexpr MessageId kAllSpacesListed{"edit.all_spaces_listed"};
constexpr MessageId kTimesAscend{"edit.times_ascend"};
constexpr MessageId kWholeHours{"edit.whole_hours"};
constexpr MessageId kNoList{"edit.no_such_list"};

// What a new row of a curve starts with; typed over as soon as the data sheet is read. Common practice, no
// source.
constexpr Seconds kNextTime{1.0};
constexpr Fraction kNextLoad{0.1};
constexpr Fraction kLikelyEfficiency{0.9};

// -- what fields say about each other; each looks at the plan after the change

std::optional<Message> checkBreakerPlace(const Plan& before, const Plan& after, const Breaker& breaker) {
  if (!breaker.panel.valid()) return say(kBreakerNeedsPanel);
  if (auto missing = noSuchPlace(after, placementOf(breaker))) return missing;
  const Placement place = placementOf(breaker);
  // Where only the stage changes, a breaker that stood in a reading goes on standing there.
  const Breaker& earlier = *find(before, breaker.id);
  const auto arrives = [&](Reading reading) {
    return stands(breaker, reading) && !(placementOf(earlier) == place && stands(earlier, reading));
  };
  if (arrives(Reading::planned)) {
    if (auto reason = refusal(before, place, {breaker.id})) return reason;
  }
  if (arrives(Reading::before)) {
    const BreakerId other = occupantOf(before, place, Reading::before, {breaker.id});
    if (other.valid())
      return say(kStoodThere, nameOf(before, other), spaceNames(*find(after, breaker.panel), place));
  }
  return std::nullopt;
}

std::optional<Message> checkStage(const Plan& plan, const Breaker& breaker) {
  if (!breaker.stage.is(Stage::removed) && !breaker.stage.is(Stage::leftInPlace)) return std::nullopt;
  if (const Circuit* circuit = circuitOn(plan, breaker.id, Reading::planned))
    return say(kStillFeeds, circuit->name);
  return std::nullopt;
}

std::optional<Message> checkFeeds(const Plan& plan, const Breaker& breaker) {
  if (breaker.feeds.is(Feeds::circuit)) return std::nullopt;
  if (const Circuit* circuit = circuitOn(plan, breaker.id, Reading::planned))
    return say(kStillFeeds, circuit->name);
  return std::nullopt;
}

std::optional<Message> checkSpaces(const Plan& plan, const Panel& panel) {
  for (const auto& breaker : plan.breakers) {
    if (breaker->panel == panel.id && noSuchPlace(plan, placementOf(*breaker))) {
      return say(kCutsOff, panel.name, nameOf(plan, breaker->id));
    }
  }
  return std::nullopt;
}

std::optional<Message> checkFedFrom(const Plan& plan, const Panel& panel) {
  std::size_t steps = 0;
  for (const Panel* ahead = find(plan, panel.fedFrom); ahead != nullptr; ahead = find(plan, ahead->fedFrom)) {
    if (ahead->id == panel.id || ++steps > plan.panels.size()) return say(kFedInCircle, panel.name);
  }
  return std::nullopt;
}

std::optional<Message> checkSpaceException(const Panel& panel, const Space& space) {
  const Column column = space.column.valueOr(Column::left);
  if (!hasSpace(panel, {column, space.row})) return say(kNoSuchSpace, panel.name);
  const auto same = std::count_if(panel.exceptions.begin(), panel.exceptions.end(), [&](const Space& other) {
    return other.row == space.row && other.column.valueOr(Column::left) == column;
  });
  if (same > 1) return say(kSpaceTwice, printedNumber(panel, {column, space.row}));
  return std::nullopt;
}

std::optional<Message> checkTimes(const Inverter& inverter) {
  const auto& points = inverter.overload;
  const auto late =
      std::adjacent_find(points.begin(), points.end(),
                         [](const OverloadPoint& a, const OverloadPoint& b) { return a.time >= b.time; });
  if (late != points.end()) return say(kTimesAscend);
  return std::nullopt;
}

std::optional<Message> checkReference(const Plan& plan, const Field& field, std::int64_t id) {
  if (id == 0) return std::nullopt;
  if (findRecord(plan, {field.target, id}) == nullptr) return say(kNoEntity, std::string(field.key), id);
  return std::nullopt;
}

std::optional<Message> checkCircuitBreaker(const Plan& plan, BreakerId breaker, Reading reading) {
  const Breaker* record = find(plan, breaker);
  if (record == nullptr) return std::nullopt;
  if (!stands(*record, reading)) return say(kNotStanding, nameOf(plan, breaker));
  if (!record->feeds.is(Feeds::circuit) && !record->feeds.is(Feeds::nothing)) {
    const Panel* panel = find(plan, record->panel);
    return say(kFeedsOther, panel != nullptr ? spaceNames(*panel, placementOf(*record)) : std::string());
  }
  return std::nullopt;
}

std::optional<Message> checkAcross(const Plan& before, const Plan& after, const EntityRef& entity,
                                   std::string_view key) {
  switch (entity.kind) {
    case RecordKind::breaker: {
      const Breaker& breaker = *find(after, BreakerId{entity.id});
      if (key == "stage") {
        if (auto reason = checkStage(after, breaker)) return reason;
      }
      if (key == "feeds") return checkFeeds(after, breaker);
      if (key == "feeds_panel" && breaker.feedsPanel.valid() && breaker.feedsPanel == breaker.panel) {
        return say(kFeedsItself);
      }
      if (key == "panel" || key == "column" || key == "row" || key == "half" || key == "poles" ||
          key == "stage") {
        return checkBreakerPlace(before, after, breaker);
      }
      return std::nullopt;
    }
    case RecordKind::circuit: {
      const Circuit& circuit = *find(after, CircuitId{entity.id});
      if (key == "breaker") return checkCircuitBreaker(after, circuit.breaker, Reading::before);
      if (key == "planned") return checkCircuitBreaker(after, circuit.planned, Reading::planned);
      return std::nullopt;
    }
    case RecordKind::panel: {
      const Panel& panel = *find(after, PanelId{entity.id});
      if (key == "spaces") return checkSpaces(after, panel);
      if (key == "fed_from") return checkFedFrom(after, panel);
      return std::nullopt;
    }
    case RecordKind::space:
      if (key != "column" && key != "row") return std::nullopt;
      return checkSpaceException(*find(after, PanelId{entity.id}),
                                 *static_cast<const Space*>(findRecord(after, entity)));
    case RecordKind::overloadPoint:
      return key == "time_s" ? checkTimes(*after.inverter) : std::nullopt;
    case RecordKind::useWindow: {
      const auto& window = *static_cast<const UseWindow*>(findRecord(after, entity));
      if (window.from.minutes() % 60 != 0 || window.to.minutes() % 60 != 0)
        return say(kWholeHours, std::string(key));
      return std::nullopt;
    }
    default:
      return std::nullopt;
  }
}

// A breaker that becomes new fed nothing before the work, and one that turns out to exist fed its circuit
// then.
void followStage(Plan& plan, const Breaker& breaker) {
  if (breaker.stage.is(Stage::fresh)) {
    for (const CircuitId id : circuitsOn(plan, breaker.id, Reading::before)) edit(plan, id).breaker = {};
  } else if (breaker.stage.is(Stage::existing)) {
    for (const CircuitId id : circuitsOn(plan, breaker.id, Reading::planned)) {
      if (!find(plan, id)->breaker.valid()) edit(plan, id).breaker = breaker.id;
    }
  }
}

// A spare, or an old breaker without function, gets one again with the circuit that is put on it.
void followBreaker(Plan& plan, BreakerId id) {
  const Breaker* breaker = find(plan, id);
  if (breaker == nullptr) return;
  const bool spare = breaker->feeds.is(Feeds::nothing);
  const bool left = breaker->stage.is(Stage::leftInPlace);
  if (!spare && !left) return;
  Breaker& used = edit(plan, id);
  used.feeds = Feeds::circuit;
  if (left) used.stage = Stage::existing;
}

// The list of that name in a record, where its items are plain rows and not entities of their own.
const Children* itemList(RecordKind owner, std::string_view key) {
  for (const Children& list : recordType(owner).children) {
    if (list.key == key && isRow(list.kind)) return &list;
  }
  return nullptr;
}

void startRow(OverloadPoint& point, const std::vector<OverloadPoint>& earlier) {
  if (earlier.empty()) {
    point.time = kNextTime;
    return;
  }
  point.watts = earlier.back().watts;
  point.legCurrent = earlier.back().legCurrent;
  point.time = earlier.back().time + kNextTime;
}

void startRow(EfficiencyPoint& point, const std::vector<EfficiencyPoint>& earlier,
              std::optional<Fraction> marginal) {
  point.load = earlier.empty() ? Fraction(1.0) : std::min(earlier.back().load + kNextLoad, Fraction(2.0));
  point.efficiency = earlier.empty() ? marginal.value_or(kLikelyEfficiency) : earlier.back().efficiency;
}

std::optional<SpacePosition> unlistedSpace(const Panel& panel) {
  for (const SpacePosition position : allSpaces(panel)) {
    const bool listed = std::any_of(
        panel.exceptions.begin(), panel.exceptions.end(),
        [&](const Space& space) { return space.row == position.row && space.column.is(position.column); });
    if (!listed) return position;
  }
  return std::nullopt;
}

struct Apply {
  const Plan& plan;
  Result<Plan> operator()(const fix::Move& move) const {
    return moveCircuits(plan, move.circuits, move.panel, move.landing);
  }
  Result<Plan> operator()(const fix::SendBack& back) const { return sendBack(plan, back.circuits); }
  Result<Plan> operator()(const fix::SetField& set) const {
    return setField(plan, set.entity, set.key, set.value);
  }
  Result<Plan> operator()(const fix::SetFields& sets) const {
    Plan changed = plan;
    for (const fix::SetField& set : sets.fields) {
      const Result<Plan> next = setField(changed, set.entity, set.key, set.value);
      if (!next.ok()) return next;
      changed = next.value();
    }
    return changed;
  }
  Result<Plan> operator()(const fix::Relocate& place) const {
    return relocate(plan, place.breaker, place.position);
  }
};

}  // namespace
}  // namespace editing

using namespace editing;

Result<Plan> setField(const Plan& plan, const EntityRef& entity, std::string_view key,
                      const FieldValue& value) {
  if (findRecord(plan, entity) == nullptr) return say(kNoSuchThing);
  const Field* field = fieldOf(entity.kind, key);
  if (field == nullptr) return say(kNoField, std::string(recordType(entity.kind).name), std::string(key));
  if (field->kind == FieldKind::identity) return say(kIdStays);
  if (auto reason = check(*field, value)) return *reason;
  if (field->kind == FieldKind::reference) {
    if (auto reason = checkReference(plan, *field, std::get<std::int64_t>(value))) return *reason;
  }
  Plan changed = plan;
  field->set(editRecord(changed, entity), value);
  if (auto reason = checkAcross(plan, changed, entity, key)) return *reason;
  if (entity.kind == RecordKind::breaker && key == "rating_A") {
    edit(changed, BreakerId{entity.id}).ratingRead = Answer::yes;  // whoever enters one has read it
  }
  if (entity.kind == RecordKind::breaker && key == "stage") {
    followStage(changed, Breaker(*find(changed, BreakerId{entity.id})));
  }
  if (entity.kind == RecordKind::circuit && key == "planned") {
    followBreaker(changed, BreakerId(find(changed, CircuitId{entity.id})->planned));
  }
  return changed;
}

Result<Plan> addItem(const Plan& plan, const EntityRef& owner, std::string_view list) {
  if (findRecord(plan, owner) == nullptr) return say(kNoSuchThing);
  const Children* children = itemList(owner.kind, list);
  if (children == nullptr) return say(kNoList, std::string(recordType(owner.kind).name), std::string(list));
  Plan added = plan;
  void* item = children->append(editRecord(added, owner));
  switch (children->kind) {
    case RecordKind::space: {
      const std::optional<SpacePosition> free = unlistedSpace(*find(plan, PanelId{owner.id}));
      if (!free) return say(kAllSpacesListed);
      auto& space = *static_cast<Space*>(item);
      space.column = free->column;
      space.row = free->row;
      break;
    }
    case RecordKind::overloadPoint:
      startRow(*static_cast<OverloadPoint*>(item), plan.inverter->overload);
      break;
    case RecordKind::efficiencyPoint:
      startRow(*static_cast<EfficiencyPoint*>(item), plan.inverter->efficiency,
               plan.inverter->marginalEfficiency);
      break;
    default:
      break;  // as it is: a use window all day, all year
  }
  return added;
}

Result<Plan> removeItem(const Plan& plan, const EntityRef& item) {
  if (findRecord(plan, item) == nullptr) return say(kNoSuchThing);
  const EntityRef owner = ownerOf(plan, item);
  for (const Children& list : recordType(owner.kind).children) {
    if (list.kind != item.kind || !(isRow(list.kind) || isOwn(list.kind))) continue;
    Plan left = plan;
    list.erase(editRecord(left, owner), static_cast<std::size_t>(item.item));
    return left;
  }
  return say(kNoSuchThing);
}

Result<Plan> applyFix(const Plan& plan, const Fix& fix) { return std::visit(Apply{plan}, fix); }

}  // namespace stayalight
