#include "ui/shell/feeder_picture.h"

#include <algorithm>

#include "ui/style/fonts.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

using Box = FeederPicture::Box;
using Mark = FeederPicture::Mark;

constexpr MessageId kOff{"shell.feeder.off"};
constexpr MessageId kMain{"shell.feeder.main"};
constexpr MessageId kInverter{"shell.feeder.inverter"};
constexpr MessageId kBackup{"shell.feeder.backup"};
constexpr MessageId kGenerator{"shell.feeder.generator"};
constexpr MessageId kBypass{"shell.feeder.bypass"};
constexpr MessageId kAmperes{"shell.feeder.amperes"};
constexpr MessageId kBus{"shell.feeder.bus"};
constexpr MessageId kWatts{"shell.feeder.watts"};
constexpr MessageId kWire{"shell.feeder.wire"};
constexpr MessageId kGround{"shell.feeder.ground"};
constexpr MessageId kUnknown{"answers.unknown_value"};

constexpr double kBypassLane = 19.0;
constexpr double kTextHeight = 14.0;
constexpr double kLinkLane = 12.0;  // left of the sources, for a generator that comes in at the main panel
constexpr double kMarkWidth = 8.0;
constexpr double kAboveLine = 18.5;  // from a line to the top of the text over it

using Wire = FeederFacts::Wire;

QString both(const Wire& wire) {
  return wire.size.isEmpty() ? wire.device : QString(wire.device + QStringLiteral("   ") + wire.size);
}
bool through(const FeederFacts& facts) { return facts.arrangement == Arrangement::inverterPassThrough; }
/// Charging beside a switch.
bool charges(const FeederFacts& facts) { return !through(facts) && facts.has(Segment::mainToInverter); }

QString watts(const std::optional<Watts>& power, const Language& language) {
  if (!power) return {};
  return words(language, kWatts, Figure{power->count() / 1000.0, "kW", power->count() < 9950 ? 1 : 0});
}
QString rating(const std::optional<RatingAmperes>& amperes, MessageId id, const Language& language) {
  return amperes ? words(language, id, std::int64_t{amperes->count()}) : QString();
}

Wire wireOf(const SegmentFigures& figures, const Language& language) {
  Wire wire;
  // The breaker that the plan holds for it; else the one that was chosen.
  const auto& device = figures.device.inPlan ? figures.device.inPlan : figures.device.rating;
  wire.device = device ? rating(device, kAmperes, language) : words(language, kUnknown);
  if (figures.conductor.size) {
    const ConductorSize size = *figures.conductor.size;
    // The drawing is narrow: the cross-section stands in the answers and on paper, not behind the size here.
    wire.size =
        words(language, kWire, std::string(name(size)) + "\u00a0" + std::string(unit(size)),
              words(language, figures.conductor.metal == Metal::copper ? MessageId{"answers.copper"}
                                                                       : MessageId{"answers.aluminium"})
                  .toStdString());
  }
  if (figures.ground) wire.ground = words(language, kGround, std::string(name(*figures.ground)));
  return wire;
}

class Drawer {
 public:
  Drawer(const FeederFacts& facts, const QRectF& area) : facts_(facts), area_(area) {
    if (facts.has(Segment::bypass)) area_.setTop(area_.top() + kBypassLane);
  }

  FeederPicture make() {
    if (through(facts_)) {
      throughInverter();
    } else {
      bySwitch();
    }
    if (facts_.has(Segment::bypass)) bypass();
    for (const Box& box : {main_, inverter_, generator_, backup_}) {
      if (!box.rect.isEmpty()) picture_.boxes.push_back(box);
    }
    return std::move(picture_);
  }

 private:
  static Box boxOf(const FeederFacts::Source& source, const QRectF& rect) {
    return {rect, source.title, source.fact, rect.height() > 24.0};
  }
  [[nodiscard]] const Wire& wireOf(Segment segment) const {
    return facts_.wires[static_cast<std::size_t>(segment)];
  }

  void line(Segment segment, std::vector<QPointF> points, bool dashed = false) {
    picture_.lines.push_back({std::move(points), segment, dashed});
  }
  void mark(Mark which, QPointF at, bool upright = false, QPointF to = {}) {
    picture_.symbols.push_back({which, at, to, upright});
  }
  void text(const QRectF& rect, const QString& whole, Qt::Alignment align, bool strong) {
    const Weight weight = strong ? Weight::medium : Weight::regular;
    const QString shown = elided(whole, rect.width(), Face::condensed, kPictureText, weight);
    if (shown.isEmpty()) return;
    // The place of the letters, not all the room there was for them.
    QRectF place = rect;
    const double width =
        std::min(rect.width(), textWidth(shown, Face::condensed, kPictureText, weight) + 1.0);
    if ((align & Qt::AlignHCenter) != 0) place.setLeft(rect.center().x() - width / 2.0);
    place.setWidth(width);
    picture_.texts.push_back({place, shown, align, strong});
  }

  // From a source to its contact: breaker, what it is made of, four conductors.
  void dress(double from, double contact, double y, const Wire& wire) {
    mark(Mark::breaker, {from + 22.0, y});
    mark(Mark::conductors, {contact - 22.0, y});
    const double left = from + 34.0;
    text(QRectF(left, y - kAboveLine, contact - left, kTextHeight), fitting(wire, contact - left),
         Qt::AlignLeft | Qt::AlignVCenter, true);
  }
  // Between two boxes above each other; what it is made of stands beside it at `label`.
  void link(Segment segment, std::vector<QPointF> points, QPointF breaker, const QRectF& label) {
    line(segment, std::move(points));
    mark(Mark::breaker, breaker, true);
    text(label, fitting(wireOf(segment), label.width()), Qt::AlignLeft | Qt::AlignVCenter, true);
  }
  // The device alone where there is no room for the wire; the figures beside the picture have both.
  static QString fitting(const Wire& wire, double width) {
    const QString all = both(wire);
    return textWidth(all, Face::condensed, kPictureText, Weight::medium) <= width ? all : wire.device;
  }

  void bySwitch() {
    const bool generator = facts_.has(Segment::generatorInlet);
    const GeneratorPoint point = facts_.generatorAt;
    const int rows = generator ? 3 : 2;
    const double left = area_.left() + (generator && point == GeneratorPoint::mainPanel ? kLinkLane : 0.0);
    const double right = area_.right();
    const double share = area_.height() / rows;
    // A link between two boxes wants room for its breaker.
    const double boxHeight = std::clamp(share - 16.0, 15.0, 30.0);
    const double boxWidth = std::clamp(area_.width() * 0.19, 84.0, 96.0);
    const double first = area_.top() + std::max(boxHeight / 2.0 + 2.0, kAboveLine);
    const double last = area_.bottom() - boxHeight / 2.0 - 2.0;
    const auto y = [&](int row) { return first + (last - first) * row / (rows - 1); };
    const auto at = [&](int row) { return QRectF(left, y(row) - boxHeight / 2.0, boxWidth, boxHeight); };
    main_ = boxOf(facts_.main, at(0));
    inverter_ = boxOf(facts_.inverter, at(1));
    if (generator) generator_ = boxOf(facts_.generator, at(2));

    const bool third = generator && point == GeneratorPoint::transfer;
    const double contact = left + (right - left) * 0.53, pivot = contact + 30.0;
    const double middle = third ? y(1) : (y(0) + y(1)) / 2.0;
    backup_ = boxOf(facts_.backup, QRectF(right - boxWidth, middle - boxHeight / 2.0, boxWidth, boxHeight));
    line(Segment::mainToSwitch, {{main_.rect.right(), y(0)}, {contact, y(0)}});
    dress(main_.rect.right(), contact, y(0), wireOf(Segment::mainToSwitch));
    line(Segment::inverterToSwitch, {{inverter_.rect.right(), y(1)}, {contact, y(1)}});
    dress(inverter_.rect.right(), contact, y(1), wireOf(Segment::inverterToSwitch));
    mark(Mark::contact, {contact, y(0)});
    mark(Mark::contact, {contact, y(1)});
    if (third) {
      line(Segment::generatorInlet, {{generator_.rect.right(), y(2)}, {contact, y(2)}});
      dress(generator_.rect.right(), contact, y(2), wireOf(Segment::generatorInlet));
      mark(Mark::contact, {contact, y(2)});
    }
    mark(Mark::blade, {contact, y(0)}, false, {pivot, middle});
    mark(Mark::pivot, {pivot, middle});
    if (facts_.arrangement == Arrangement::manualSwitch) {
      // Between the first two contacts, clear of the text over the second line.
      const double off = (y(0) + 5.0 + y(1) - kAboveLine) / 2.0;
      mark(Mark::off, {contact, off});
      if (y(1) - kAboveLine - (y(0) + 5.0) >= kTextHeight)
        text(QRectF(contact - 46.0, off - kTextHeight / 2.0, 36.0, kTextHeight), facts_.off,
             Qt::AlignLeft | Qt::AlignVCenter, false);
    }
    line(Segment::switchToBackup, {{pivot, middle}, {backup_.rect.left(), middle}});
    const double centre = (pivot + backup_.rect.left()) / 2.0;
    const double room = backup_.rect.left() - pivot - 4.0;
    const Wire wire = wireOf(Segment::switchToBackup);
    mark(Mark::conductors, {centre - 6.0, middle});
    text(QRectF(centre - room / 2.0, middle - 18.0, room, kTextHeight), wire.size, Qt::AlignCenter, false);
    text(QRectF(centre - room / 2.0, middle + 5.0, room, kTextHeight), wire.ground, Qt::AlignCenter, false);

    if (charges(facts_)) {
      const double x = left + boxWidth * 0.3;
      const double from = main_.rect.bottom(), to = inverter_.rect.top();
      // Under the box; past it as well where the text over the next line leaves room; not at all between
      // boxes that stand close.
      const double top = std::max(from + 1.0, (from + to) / 2.0 - kTextHeight / 2.0 - 4.0);
      const bool clear = top + kTextHeight <= y(1) - kAboveLine;
      const double end = to - from < kTextHeight + 1.0 ? x + 10.0
                         : clear                       ? contact - 50.0
                                                       : main_.rect.right() + 32.0;
      link(Segment::mainToInverter, {{x, from}, {x, to}}, {x, (from + to) / 2.0},
           QRectF(x + 10.0, top, end - (x + 10.0), kTextHeight));
    }
    if (generator && point == GeneratorPoint::inverterInput) {
      const double x = left + boxWidth * 0.3;
      const double from = generator_.rect.top(), to = inverter_.rect.bottom();
      link(Segment::generatorInlet, {{x, from}, {x, to}}, {x, (from + to) / 2.0}, besideGenerator());
    }
    if (generator && point == GeneratorPoint::mainPanel) {
      const double x = area_.left() + 2.0;
      link(Segment::generatorInlet,
           {{generator_.rect.left(), y(2)}, {x, y(2)}, {x, y(0)}, {main_.rect.left(), y(0)}},
           {x, (y(1) + y(2)) / 2.0}, besideGenerator());
    }
  }

  [[nodiscard]] QRectF besideGenerator() const {
    const double left = generator_.rect.right() + 8.0;
    return {left, generator_.rect.center().y() - kTextHeight / 2.0, area_.right() - left, kTextHeight};
  }

  void throughInverter() {
    const bool generator = facts_.has(Segment::generatorInlet);
    const double share = generator ? area_.height() * 0.52 : area_.height();
    const double y = generator ? area_.top() + std::max(21.0, share * 0.42) : area_.center().y();
    const double boxHeight = std::clamp(share * 0.5, 18.0, 30.0);
    const double boxWidth = std::clamp(area_.width() * 0.19, 84.0, 96.0);
    const auto at = [&](double x) { return QRectF(x, y - boxHeight / 2.0, boxWidth, boxHeight); };
    main_ = boxOf(facts_.main, at(area_.left()));
    inverter_ = boxOf(facts_.inverter, at(area_.center().x() - boxWidth / 2.0));
    backup_ = boxOf(facts_.backup, at(area_.right() - boxWidth));
    const auto piece = [&](const QRectF& from, const QRectF& to, Segment segment) {
      const Wire wire = wireOf(segment);
      line(segment, {{from.right(), y}, {to.left(), y}});
      mark(Mark::breaker, {from.right() + 16.0, y});
      const double centre = (from.right() + to.left()) / 2.0 + 4.0;
      mark(Mark::conductors, {centre + 6.0, y});
      const double room = to.left() - from.right() - 4.0;
      const auto label = [&](double top, const QString& what, bool strong) {
        text(QRectF((from.right() + to.left() - room) / 2.0, top, room, kTextHeight), what, Qt::AlignCenter,
             strong);
      };
      label(y - 21.0, wire.device, true);
      label(y + 6.0, wire.size, false);
      if (y + 20.0 + kTextHeight <= area_.bottom()) label(y + 20.0, wire.ground, false);
    };
    piece(main_.rect, inverter_.rect, Segment::mainToInverter);
    piece(inverter_.rect, backup_.rect, Segment::inverterToBackup);
    if (!generator) return;
    const GeneratorPoint point = facts_.generatorAt;
    const QRectF& into = point == GeneratorPoint::mainPanel  ? main_.rect
                         : point == GeneratorPoint::transfer ? backup_.rect
                                                             : inverter_.rect;
    const double height = std::clamp(area_.height() - share - 12.0, 15.0, 24.0);
    generator_ =
        boxOf(facts_.generator, QRectF(into.left(), area_.bottom() - 1.0 - height, boxWidth, height));
    const double x = into.center().x();
    // What it is made of stands beside the generator, on the side where there is room.
    QRectF label = besideGenerator();
    if (label.width() < 90.0) {
      const double width = 130.0;
      label.setLeft(generator_.rect.left() - 8.0 - width);
      label.setWidth(width);
    } else if (point == GeneratorPoint::mainPanel) {
      label.setWidth(std::min(label.width(), area_.width() / 2.0));
    }
    link(Segment::generatorInlet, {{x, generator_.rect.top()}, {x, into.bottom()}},
         {x, (generator_.rect.top() + into.bottom()) / 2.0}, label);
  }

  void bypass() {
    const double y = area_.top() - 3.0;
    const double from = main_.rect.left() + main_.rect.width() * 0.6, to = backup_.rect.center().x();
    line(Segment::bypass, {{from, main_.rect.top()}, {from, y}, {to, y}, {to, backup_.rect.top()}}, true);
    const double left = main_.rect.right() + 34.0;
    mark(Mark::breaker, {main_.rect.right() + 22.0, y});
    text(QRectF(left, y - 16.0, to - left - 8.0, kTextHeight),
         facts_.bypass + QLatin1Char(' ') + both(wireOf(Segment::bypass)), Qt::AlignLeft | Qt::AlignVCenter,
         true);
  }

  const FeederFacts& facts_;
  QRectF area_;
  FeederPicture picture_;
  Box main_, inverter_, generator_, backup_;
};

}  // namespace

QRectF FeederPicture::Symbol::rect() const {
  switch (mark) {
    case Mark::breaker:
      return upright ? QRectF(at.x() - 6.0, at.y() - kMarkWidth / 2.0, 12.0, kMarkWidth)
                     : QRectF(at.x() - kMarkWidth, at.y() - 6.0, 2.0 * kMarkWidth, 8.0);
    case Mark::conductors:
      return {at.x() - 2.0, at.y() - 4.0, 16.0, 8.0};
    case Mark::contact:
    case Mark::pivot:
      return {at.x() - 2.6, at.y() - 2.6, 5.2, 5.2};
    case Mark::blade:
      return QRectF(at, to).normalized();
    case Mark::off:
      return {at.x() - 6.0, at.y() - 1.0, 10.0, 2.0};
  }
  return {};
}

bool FeederFacts::has(Segment segment) const {
  return std::find(pieces.begin(), pieces.end(), segment) != pieces.end();
}

FeederFacts feederFacts(const Plan& plan, const Assessment& assessment, const Language& language) {
  FeederFacts facts;
  facts.arrangement = plan.transfer->arrangement.valueOr(Arrangement::none);
  facts.generatorAt = plan.generator->comesIn.valueOr(GeneratorPoint::none);
  facts.pieces = segments(plan);
  const auto source = [&](MessageId title, QString fact) {
    return FeederFacts::Source{words(language, title), std::move(fact)};
  };
  const Panel* main = mainPanel(plan);
  const Panel* backup = backupPanel(plan);
  facts.main = source(kMain, main != nullptr ? rating(main->mainBreaker, kAmperes, language) : QString());
  facts.inverter = source(kInverter, watts(assessment.limits.total, language));
  facts.generator = source(kGenerator, watts(plan.generator->continuous, language));
  facts.backup = source(kBackup, backup != nullptr ? rating(backup->busRating, kBus, language) : QString());
  for (const SegmentFigures& figures : assessment.segments)
    facts.wires[static_cast<std::size_t>(figures.segment)] = wireOf(figures, language);
  facts.off = words(language, kOff);
  facts.bypass = words(language, kBypass);
  return facts;
}

FeederPicture feederPicture(const FeederFacts& facts, const QRectF& area) {
  if (facts.arrangement == Arrangement::none) return {};
  return Drawer(facts, area).make();
}

double leastPictureHeight(const FeederFacts& facts) {
  const bool generator = facts.has(Segment::generatorInlet);
  const double sources = through(facts) ? (generator ? 84.0 : 42.0) : generator ? 84.0 : 68.0;
  return sources + (facts.has(Segment::bypass) ? kBypassLane : 0.0);
}

double pictureHeight(const FeederFacts& facts) {
  const double sources = facts.has(Segment::generatorInlet) ? 116.0 : 82.0;
  return sources + (facts.has(Segment::bypass) ? kBypassLane : 0.0);
}

}  // namespace stayalight
