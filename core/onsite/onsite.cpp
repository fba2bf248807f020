#include "core/onsite/onsite.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/onsite/facts.h"
#include "core/wiring/extension.h"

namespace stayalight {
namespace {

using namespace on_site;

constexpr MessageId kAtHouse{"onsite.where.house"};
constexpr MessageId kAtPanel{"onsite.where.panel"};
constexpr MessageId kAtSpace{"onsite.where.space"};
constexpr MessageId kAtCircuit{"onsite.where.circuit"};
constexpr MessageId kAtLoad{"onsite.where.load"};
constexpr MessageId kAtCircuitAlone{"onsite.where.circuit_alone"};
constexpr MessageId kAtTransfer{"onsite.where.transfer"};
constexpr MessageId kAtAuthority{"onsite.where.authority"};
constexpr MessageId kAtManaged{"onsite.where.managed"};
constexpr MessageId kAtManagedAlone{"onsite.where.managed_alone"};
constexpr MessageId kAtRun{"onsite.where.run"};
constexpr MessageId kAtRaceway{"onsite.where.raceway"};
constexpr MessageId kAtBox{"onsite.where.box"};
constexpr MessageId kAtInverter{"onsite.where.inverter"};
constexpr MessageId kAtBattery{"onsite.where.battery"};
constexpr MessageId kAtSolar{"onsite.where.solar"};
constexpr MessageId kAtGenerator{"onsite.where.generator"};
constexpr MessageId kAtCable{"onsite.where.cable"};
constexpr MessageId kMissingRun{"onsite.transfer.run"};

std::string_view fieldIn(RecordKind kind, std::string_view key) {
  const std::string_view name = key.substr(key.find('.') + 1);
  return fieldOf(kind, name) != nullptr ? name : std::string_view();
}

/// Where somebody who stands before the panels finds a breaker.
struct Spot {
  std::size_t panel = 0;
  bool byColumn = false;
  SpacePosition position;
  Half half = Half::whole;
  BreakerId breaker;
  [[nodiscard]] auto order() const {
    const auto column = static_cast<std::int32_t>(position.column);
    return std::tuple(panel, byColumn ? column : position.row, byColumn ? position.row : column, half,
                      breaker);
  }
};

class List {
 public:
  List(const Plan& plan, const Tables& tables) : plan_(plan), house_(plan, tables) {}

  std::vector<OnSiteItem> make() {
    panels();
    collect(siteFacts(), *plan_.site, {RecordKind::site}, {}, [] { return say(kAtHouse); });
    authority();
    collect(transferFacts(), *plan_.transfer, {RecordKind::transfer}, {}, [] { return say(kAtTransfer); });
    managed();
    feeder();
    for (const auto& raceway : plan_.raceways) {
      collect(racewayFacts(), *raceway, {RecordKind::raceway, raceway->id.number}, {}, [&] {
        return say(kAtRaceway, raceway->name.empty() ? std::to_string(raceway->id.number) : raceway->name);
      });
    }
    for (const auto& box : plan_.spliceBoxes) {
      collect(boxFacts(), *box, {RecordKind::spliceBox, box->id.number}, {},
              [&] { return say(kAtBox, box->name.empty() ? std::to_string(box->id.number) : box->name); });
    }
    collect(inverterFacts(), *plan_.inverter, {RecordKind::inverter}, {}, [] { return say(kAtInverter); });
    collect(batteryFacts(), *plan_.battery, {RecordKind::battery}, {}, [] { return say(kAtBattery); });
    collect(solarFacts(), *plan_.solar, {RecordKind::solar}, {}, [] { return say(kAtSolar); });
    collect(generatorFacts(), *plan_.generator, {RecordKind::generator}, {},
            [] { return say(kAtGenerator); });
    collect(cableFacts(), *plan_.dcCable, {RecordKind::dcCable}, {}, [] { return say(kAtCable); });
    return std::move(list_);
  }

 private:
  template <class Record, class Where>
  void collect(std::span<const Fact<Record>> facts, const Record& record, EntityRef place, PanelId panel,
               Where where) {
    for (const Fact<Record>& fact : facts) {
      if (!fact.open(house_, record)) continue;
      list_.push_back(
          {fact.key, fieldIn(place.kind, fact.key), fact.doer, place, panel, say(fact.what), where()});
    }
  }

  // All breakers of both readings, in the order of the panels and their spaces.
  [[nodiscard]] std::vector<Spot> spots() const {
    std::vector<Spot> all;
    for (const auto& breaker : plan_.breakers) {
      const auto at = std::find_if(plan_.panels.begin(), plan_.panels.end(),
                                   [&](const auto& panel) { return panel->id == breaker->panel; });
      if (at == plan_.panels.end()) continue;
      all.push_back({static_cast<std::size_t>(at - plan_.panels.begin()),
                     (*at)->numbering.is(Numbering::downColumns), breaker->position(),
                     breaker->half.valueOr(Half::whole), breaker->id});
    }
    std::sort(all.begin(), all.end(), [](const Spot& a, const Spot& b) { return a.order() < b.order(); });
    return all;
  }

  void panels() {
    // A circuit is looked for where it stands today; a new one where it will stand.
    std::map<BreakerId, std::vector<const Circuit*>> circuits;
    std::vector<const Circuit*> elsewhere;
    for (const auto& circuit : plan_.circuits) {
      const Breaker* today = find(plan_, circuit->breaker);
      if (today == nullptr) today = find(plan_, circuit->planned);
      const bool placed = today != nullptr && find(plan_, today->panel) != nullptr;
      (placed ? circuits[today->id] : elsewhere).push_back(&*circuit);
    }
    const std::vector<Spot> all = spots();
    std::size_t next = 0;
    for (std::size_t i = 0; i < plan_.panels.size(); ++i) {
      const Panel& panel = *plan_.panels[i];
      collect(panelFacts(), panel, {RecordKind::panel, panel.id.number}, panel.id,
              [&] { return say(kAtPanel, panel.name); });
      for (; next < all.size() && all[next].panel == i; ++next) {
        const Breaker& breaker = *find(plan_, all[next].breaker);
        const std::string spaces = spaceNames(panel, placementOf(breaker));
        if (stands(breaker, Reading::planned)) {
          collect(breakerFacts(), breaker, {RecordKind::breaker, breaker.id.number}, panel.id,
                  [&] { return say(kAtSpace, panel.name, spaces); });
        }
        for (const Circuit* circuit : circuits[breaker.id]) {
          const std::string name = circuitName(*circuit);
          this->circuit(
              *circuit, panel.id, [&] { return say(kAtCircuit, panel.name, spaces, name); },
              [&](const std::string& load) {
                return load.empty() || load == name ? say(kAtCircuit, panel.name, spaces, name)
                                                    : say(kAtLoad, panel.name, spaces, name, load);
              });
        }
      }
    }
    for (const Circuit* circuit : elsewhere) {
      const auto where = [&] { return say(kAtCircuitAlone, circuitName(*circuit)); };
      this->circuit(*circuit, {}, where, [&](const std::string&) { return where(); });
    }
  }

  template <class Where, class WhereLoad>
  void circuit(const Circuit& circuit, PanelId panel, Where where, WhereLoad whereLoad) {
    collect(circuitFacts(), circuit, {RecordKind::circuit, circuit.id.number}, panel, where);
    for (const Load& load : circuit.loads) {
      collect(loadFacts(), OnCircuit{circuit, load}, {RecordKind::load, load.id.number}, panel,
              [&] { return whereLoad(load.name); });
    }
  }

  void authority() {
    for (std::size_t i = 0; i < plan_.site->answers.size(); ++i) {
      const AuthorityAnswer& row = plan_.site->answers[i];
      collect(authorityFacts(), row, {RecordKind::authorityAnswer, 0, static_cast<std::int32_t>(i)}, {},
              [&] { return say(kAtAuthority, row.question); });
    }
  }

  void managed() {
    for (std::size_t i = 0; i < plan_.transfer->managed.size(); ++i) {
      const ManagedLoad& row = plan_.transfer->managed[i];
      collect(managedFacts(), row, {RecordKind::managedLoad, 0, static_cast<std::int32_t>(i)}, {}, [&] {
        const Circuit* circuit = circuitOf(plan_, row.load);
        if (circuit == nullptr) return say(kAtManagedAlone, static_cast<std::int64_t>(i + 1));
        const auto load = std::find_if(circuit->loads.begin(), circuit->loads.end(),
                                       [&](const Load& each) { return each.id == row.load; });
        return say(kAtManaged, load->name.empty() ? circuitName(*circuit) : load->name);
      });
    }
  }

  void feeder() {
    for (const Segment segment : house_.pieces) {
      if (!house_.anyBackedUp || runOf(plan_, segment) != nullptr) continue;
      list_.push_back({missingRunKey(segment),
                       {},
                       Doer::qualifiedPerson,
                       {RecordKind::transfer},
                       {},
                       say(kMissingRun),
                       say(kAtRun, std::vector<Message>{segmentName(segment)})});
    }
    for (const auto& run : plan_.runs) {
      collect(runFacts(), *run, {RecordKind::feederRun, run->id.number}, {}, [&] {
        const Segment segment = run->segment.valueOr(Segment::mainToSwitch);
        return say(kAtRun, std::vector<Message>{segmentName(segment)});
      });
    }
  }

  const Plan& plan_;
  House house_;
  std::vector<OnSiteItem> list_;
};

}  // namespace

std::vector<OnSiteItem> onSiteList(const Plan& plan, const Tables& tables) {
  return List(plan, tables).make();
}

std::vector<const OnSiteItem*> itemsOf(std::span<const OnSiteItem> list, std::string_view key) {
  std::vector<const OnSiteItem*> found;
  for (const OnSiteItem& item : list) {
    if (item.key == key) found.push_back(&item);
  }
  return found;
}

}  // namespace stayalight
