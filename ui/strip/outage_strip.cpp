#include "ui/strip/outage_strip.h"

#include <QtCore/QSignalBlocker>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTableWidget>
#include <QtWidgets/QVBoxLayout>
#include <cmath>

#include "ui/inspector/entity_text.h"
#include "ui/strip/strip_chart.h"
#include "ui/style/application.h"
#include "ui/style/program_style.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"shell.strip.head"};
constexpr MessageId kMonth{"shell.strip.month"};
constexpr MessageId kStartCharge{"shell.strip.start_charge"};
constexpr MessageId kAsTable{"shell.strip.as_table"};
constexpr std::array<MessageId, 8> kColumns = {
    MessageId{"shell.strip.column.time"},       MessageId{"shell.strip.column.low"},
    MessageId{"shell.strip.column.likely"},     MessageId{"shell.strip.column.high"},
    MessageId{"shell.strip.column.l1_average"}, MessageId{"shell.strip.column.l1_peak"},
    MessageId{"shell.strip.column.l2_average"}, MessageId{"shell.strip.column.l2_peak"}};
constexpr int kChargeStep = 10;  // per cent

}  // namespace

OutageStrip::OutageStrip(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(12, 8, 12, 4);
  column->setSpacing(2);
  auto* top = new QHBoxLayout;
  top->setSpacing(8);
  head_ = new QLabel(this);
  head_->setFont(screenFont(Face::condensed, 13, Weight::medium));
  top->addWidget(head_);
  top->addSpacing(8);
  const auto labelled = [&](QLabel*& label, QComboBox*& combo, const QString& name) {
    label = new QLabel(this);
    label->setFont(screenFont(Face::condensed, 12));
    combo = new QComboBox(this);
    combo->setObjectName(name);
    label->setBuddy(combo);
    top->addWidget(label);
    top->addWidget(combo);
  };
  labelled(monthLabel_, month_, QStringLiteral("month"));
  labelled(chargeLabel_, charge_, QStringLiteral("startCharge"));
  top->addStretch(1);
  asTable_ = new QPushButton(this);
  asTable_->setObjectName(QStringLiteral("asTable"));
  asTable_->setCheckable(true);
  top->addWidget(asTable_);
  column->addLayout(top);
  pages_ = new QStackedWidget(this);
  chart_ = new StripChart(pages_);
  chart_->setObjectName(QStringLiteral("stripChart"));
  table_ = new QTableWidget(0, static_cast<int>(kColumns.size()), pages_);
  table_->setObjectName(QStringLiteral("stripTable"));
  table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->verticalHeader()->hide();
  table_->setTabKeyNavigation(false);
  table_->setFont(screenFont(Face::condensed, 12));
  // A header takes no face from its table.
  table_->horizontalHeader()->setFont(screenFont(Face::condensed, 12));
  table_->verticalHeader()->setDefaultSectionSize(scaled(kLeastTarget) + 1);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  pages_->addWidget(chart_);
  pages_->addWidget(table_);
  column->addWidget(pages_, 1);
  connect(asTable_, &QPushButton::toggled, this, [this](bool on) { pages_->setCurrentIndex(on ? 1 : 0); });
  connect(month_, &QComboBox::activated, this,
          [this](int at) { Q_EMIT scenarioEdited("month", FieldValue(std::int64_t{at + 1})); });
  connect(charge_, &QComboBox::activated, this, [this](int at) {
    Q_EMIT scenarioEdited("start_charge", FieldValue(charge_->itemData(at).toDouble() / 100.0));
  });
  connect(chart_, &StripChart::startChosen, this, [this](TimeOfDay start) {
    Q_EMIT scenarioEdited("start_min", FieldValue(std::int64_t{start.minutes()}));
  });
  connect(chart_, &StripChart::startPreviewed, this,
          [this](TimeOfDay start) { Q_EMIT startPreviewed(start); });
  connect(chart_, &StripChart::startCancelled, this, [this] { Q_EMIT startPreviewed(std::nullopt); });
}

void OutageStrip::setColors(const Palette& palette) {
  palette_ = palette;
  chart_->setColors(palette);
}

void OutageStrip::show(const Plan& plan, const Assessment& assessment, const Language& language) {
  language_ = &language;
  head_->setText(words(language, kHead));
  monthLabel_->setText(words(language, kMonth));
  chargeLabel_->setText(words(language, kStartCharge));
  asTable_->setText(words(language, kAsTable));
  fillControls(*plan.scenario);
  // While the tab is dragged the axis stays under it.
  const std::optional<double> first = chart_->dragging() ? std::optional(chart_->data().first) : std::nullopt;
  data_ = stripData(*plan.scenario, assessment, first);
  data_.nights = nights(plan, data_.first, data_.last);
  chart_->show(data_, language);
  fillTable();
}

void OutageStrip::fillControls(const Scenario& scenario) {
  const QSignalBlocker quietMonth(month_);
  const QSignalBlocker quietCharge(charge_);
  if (month_->count() == 0) {
    for (int month = 1; month <= 12; ++month)
      month_->addItem(QString::fromStdString(monthText(month, *language_)));
  }
  month_->setCurrentIndex(scenario.month - 1);
  const double percent = scenario.startCharge.count() * 100.0;
  charge_->clear();
  bool listed = false;
  for (int step = 100; step >= kChargeStep; step -= kChargeStep) {
    if (!listed && percent > step + 1e-6) {
      charge_->addItem(QString::fromStdString(language_->number(percent, 0)) + QStringLiteral(" %"), percent);
      listed = true;
    }
    charge_->addItem(QString::number(step) + QStringLiteral(" %"), static_cast<double>(step));
    listed = listed || std::abs(percent - step) < 1e-6;
  }
  if (!listed)
    charge_->addItem(QString::fromStdString(language_->number(percent, 0)) + QStringLiteral(" %"), percent);
  for (int i = 0; i < charge_->count(); ++i) {
    if (std::abs(charge_->itemData(i).toDouble() - percent) < 1e-6) charge_->setCurrentIndex(i);
  }
}

void OutageStrip::fillTable() {
  QStringList heads;
  for (const MessageId id : kColumns) heads << words(*language_, id);
  table_->setHorizontalHeaderLabels(heads);
  // What the picture says in a sentence names the table that stands for it.
  table_->setAccessibleName(chart_->accessibleName());
  std::vector<StripReading> rows;
  if (data_.known) {
    const double end = std::min(data_.last, data_.endHigh + 1.0);
    for (double hour = data_.start; hour <= end + 1e-9; hour = std::floor(hour + 1e-9) + 1.0) {
      if (const auto reading = readingAt(data_, hour)) rows.push_back(*reading);
    }
  }
  table_->setRowCount(static_cast<int>(rows.size()));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const StripReading& r = rows[i];
    const auto number = [&](double value, int decimals) {
      return QString::fromStdString(language_->number(value, decimals));
    };
    const std::array<QString, 8> cells = {
        clockText(r.hour, *language_), number(r.low, 0),     number(r.likely, 0),     number(r.high, 0),
        number(r.average[0], 1),       number(r.peak[0], 1), number(r.average[1], 1), number(r.peak[1], 1)};
    for (std::size_t c = 0; c < cells.size(); ++c) {
      auto* item = new QTableWidgetItem(cells[c]);
      item->setTextAlignment((c == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
      table_->setItem(static_cast<int>(i), static_cast<int>(c), item);
    }
  }
}

}  // namespace stayalight
