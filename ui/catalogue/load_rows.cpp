#include "ui/catalogue/load_rows.h"

#include <QtCore/QMimeData>
#include <QtGui/QPainter>
#include <QtWidgets/QApplication>

#include "ui/catalogue/carried.h"
#include "ui/inspector/entity_text.h"
#include "ui/inspector/quantity_text.h"
#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kWatts{"catalogue.watts"};
constexpr MessageId kWattsOnly{"catalogue.watts_only"};
constexpr MessageId kAmperesOnly{"catalogue.amperes_only"};
constexpr MessageId kStartAmperes{"catalogue.start_amperes"};
constexpr MessageId kStartHorsepower{"catalogue.start_horsepower"};
constexpr MessageId kVolts{"catalogue.volts"};
constexpr MessageId kOwn{"catalogue.own"};
constexpr MessageId kOfPlan{"catalogue.of_plan"};
constexpr MessageId kSpoken{"catalogue.spoken"};
constexpr MessageId kDay{"catalogue.day"};
constexpr MessageId kOldUnit{"catalogue.old_unit"};
constexpr MessageId kSource{"catalogue.source"};

constexpr int kMargin = 8;
constexpr double kNamePixels = 13.0, kFiguresPixels = 11.5;
constexpr double kWattHours = 1000.0;

std::string text(double value, Unit unit, const Language& language) {
  return writeQuantity(value, unit, language);
}

QString startText(const Load& load, const Language& language) {
  const Field& field = *fieldOf(RecordKind::load, "start");
  const std::string kind = choiceText(field, load.start.word(), language);
  if (load.start.is(StartKind::none)) return {};
  if (load.lockedRotor.value)
    return words(language, kStartAmperes, kind,
                 text(load.lockedRotor.value->count(), Unit::ampere, language));
  if (load.horsepower)
    return words(language, kStartHorsepower, kind,
                 text(load.horsepower->count(), Unit::horsepower, language));
  return QString::fromStdString(kind);
}

}  // namespace

QString figuresText(const CatalogueEntry& entry, const Language& language) {
  const Load& load = entry.load;
  QStringList parts;
  const auto watts = [&](Watts value) { return text(value.count(), Unit::watt, language); };
  const auto& running = load.running;
  if (running.value && running.low && running.high)
    parts << words(language, kWatts, watts(*running.value), watts(*running.low), watts(*running.high));
  else if (running.value)
    parts << words(language, kWattsOnly, watts(*running.value));
  else if (load.runningCurrent.value)
    parts << words(language, kAmperesOnly, text(load.runningCurrent.value->count(), Unit::ampere, language));
  parts << words(language, kVolts, std::int64_t{load.ratedVoltage});
  const QString start = startText(load, language);
  if (!start.isEmpty()) parts << start;
  return parts.join(QStringLiteral("  \u00b7  "));
}

QString detailText(const CatalogueEntry& entry, const Language& language) {
  QStringList lines;
  if (entry.day) {
    lines << words(language, kDay, text(entry.day->low.count() / kWattHours, Unit::none, language),
                   text(entry.day->high.count() / kWattHours, Unit::none, language), entry.daySource);
  }
  if (entry.oldUnit) lines << words(language, kOldUnit, text(entry.oldUnit->count(), Unit::watt, language));
  if (!entry.source.empty()) lines << words(language, kSource, entry.source);
  return lines.join(QLatin1Char('\n'));
}

LoadRows::LoadRows(const Language& language, QObject* parent)
    : QAbstractListModel(parent), language_(language) {}

void LoadRows::setLoads(std::vector<CatalogueEntry> ofPlan, const std::vector<CatalogueEntry>& own,
                        const std::vector<CatalogueEntry>& household) {
  beginResetModel();
  found_.clear();
  ofPlan_ = ofPlan.size();
  own_ = own.size();
  loads_ = std::move(ofPlan);
  loads_.insert(loads_.end(), own.begin(), own.end());
  loads_.insert(loads_.end(), household.begin(), household.end());
  found_ = stayalight::search(loads_, typed_.toStdString());
  endResetModel();
}

void LoadRows::search(const QString& typed) {
  beginResetModel();
  typed_ = typed;
  found_ = stayalight::search(loads_, typed_.toStdString());
  endResetModel();
}

const CatalogueEntry* LoadRows::entry(const QModelIndex& index) const {
  const auto row = static_cast<std::size_t>(index.row());
  return index.isValid() && row < found_.size() ? found_[row] : nullptr;
}

int LoadRows::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(found_.size());
}

QVariant LoadRows::data(const QModelIndex& index, int role) const {
  const CatalogueEntry* found = entry(index);
  if (found == nullptr) return {};
  const auto at = static_cast<std::size_t>(found - loads_.data());
  const QString name = QString::fromStdString(found->load.name);
  switch (role) {
    case Qt::DisplayRole:
      if (at < ofPlan_) return words(language_, kOfPlan, found->load.name);
      return at < ofPlan_ + own_ ? words(language_, kOwn, found->load.name) : name;
    case figuresRole:
      return figuresText(*found, language_);
    case Qt::ToolTipRole:
      return detailText(*found, language_);
    case Qt::AccessibleTextRole:
      return words(language_, kSpoken, data(index, Qt::DisplayRole).toString().toStdString(),
                   figuresText(*found, language_).toStdString());
    case Qt::AccessibleDescriptionRole:
      return detailText(*found, language_);
    default:
      return {};
  }
}

Qt::ItemFlags LoadRows::flags(const QModelIndex& index) const {
  return index.isValid() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsDragEnabled : Qt::NoItemFlags;
}

QStringList LoadRows::mimeTypes() const { return {QString::fromLatin1(kLoadFormat)}; }

QMimeData* LoadRows::mimeData(const QModelIndexList& indexes) const {
  const CatalogueEntry* found = indexes.isEmpty() ? nullptr : entry(indexes.front());
  return found == nullptr ? nullptr : carriedLoad(*found).release();
}

void LoadRowPainter::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
  QStyleOptionViewItem ground(option);
  ground.text.clear();
  const QStyle* style = option.widget != nullptr ? option.widget->style() : QApplication::style();
  style->drawControl(QStyle::CE_ItemViewItem, &ground, painter, option.widget);
  const bool selected = option.state.testFlag(QStyle::State_Selected);
  const QColor ink =
      selected ? option.palette.color(QPalette::HighlightedText) : palette_.color(ColorRole::ink);
  const QColor second = selected ? ink : palette_.color(ColorRole::ink2);
  const QRect inside = option.rect.adjusted(kMargin, 3, -kMargin, -3);
  painter->save();
  const auto line = [&](const QString& words, double pixels, Weight weight, const QColor& color,
                        Qt::Alignment at) {
    painter->setFont(screenFont(Face::condensed, pixels, weight));
    painter->setPen(color);
    painter->drawText(inside, static_cast<int>(at),
                      painter->fontMetrics().elidedText(words, Qt::ElideRight, inside.width()));
  };
  line(index.data().toString(), kNamePixels, Weight::medium, ink, Qt::AlignLeft | Qt::AlignTop);
  line(index.data(LoadRows::figuresRole).toString(), kFiguresPixels, Weight::regular, second,
       Qt::AlignLeft | Qt::AlignBottom);
  painter->restore();
}

QSize LoadRowPainter::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
  const int lines = QFontMetrics(screenFont(Face::condensed, kNamePixels, Weight::medium)).height() +
                    QFontMetrics(screenFont(Face::condensed, kFiguresPixels)).height();
  return {option.rect.width(), lines + 8};
}

}  // namespace stayalight
