#include "ui/inspector/record_form.h"

#include <QtWidgets/QGridLayout>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QToolButton>
#include <QtWidgets/QVBoxLayout>
#include <algorithm>

#include "ui/inspector/entity_text.h"
#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/style/program_style.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kStepSet{"inspector.step.set"};
constexpr MessageId kStepAdd{"inspector.step.add"};
constexpr MessageId kStepCopy{"inspector.step.copy"};
constexpr MessageId kStepRemove{"inspector.step.remove"};
constexpr MessageId kAdd{"inspector.add"};
constexpr MessageId kCopy{"inspector.copy"};
constexpr MessageId kRemove{"inspector.remove"};
constexpr MessageId kFromCatalogue{"inspector.from_catalogue"};
constexpr MessageId kKeep{"inspector.keep"};
constexpr MessageId kTake{"inspector.take"};
constexpr int kLabelWidth = 102;

bool canCopy(RecordKind kind) {
  return kind == RecordKind::circuit || kind == RecordKind::load || kind == RecordKind::panel ||
         kind == RecordKind::breaker;
}
bool canRemove(RecordKind kind) {
  return canCopy(kind) || kind == RecordKind::feederRun || kind == RecordKind::raceway ||
         kind == RecordKind::spliceBox || isRow(kind);
}

std::string nameInStep(const Plan& plan, const EntityRef& ref, const Language& language) {
  // An item alone says little: "point 2" of what.
  const EntityRef owner = isRow(ref.kind) ? ownerOf(plan, ref) : ref;
  return entityName(plan, owner, language);
}

}  // namespace

bool isCurvePoint(RecordKind kind) {
  return kind == RecordKind::overloadPoint || kind == RecordKind::efficiencyPoint;
}

std::vector<EntityRef> recordsFor(const Plan& plan, const EntityRef& what) {
  EntityRef start = what;
  if (isRow(start.kind)) start = ownerOf(plan, start);
  if (start.kind == RecordKind::load) start = ownerOf(plan, start);
  if (start.kind == RecordKind::breaker) {
    if (const Circuit* circuit = circuitOn(plan, BreakerId{start.id}, Reading::planned))
      start = {RecordKind::circuit, circuit->id.number};
  }
  if (findRecord(plan, start) == nullptr) return {};
  std::vector<EntityRef> all{start};
  const auto items = [&](RecordKind kind, std::int64_t id, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) all.push_back({kind, id, static_cast<std::int32_t>(i)});
  };
  if (start.kind == RecordKind::site) items(RecordKind::authorityAnswer, 0, plan.site->answers.size());
  if (start.kind == RecordKind::transfer) items(RecordKind::managedLoad, 0, plan.transfer->managed.size());
  if (start.kind == RecordKind::circuit) {
    const Circuit& circuit = *find(plan, CircuitId{start.id});
    items(RecordKind::clampReading, start.id, circuit.readings.size());
    for (const Load& load : circuit.loads) {
      all.push_back({RecordKind::load, load.id.number});
      items(RecordKind::useWindow, load.id.number, load.windows.size());
    }
    for (const BreakerId breaker : {circuit.planned, circuit.breaker}) {
      const bool shownAlready = breaker == circuit.breaker && circuit.breaker == circuit.planned &&
                                all.back().kind == RecordKind::breaker;
      if (find(plan, breaker) != nullptr && !shownAlready)
        all.push_back({RecordKind::breaker, breaker.number});
    }
  }
  if (start.kind == RecordKind::panel)
    items(RecordKind::space, start.id, find(plan, PanelId{start.id})->exceptions.size());
  if (start.kind == RecordKind::inverter) {
    items(RecordKind::overloadPoint, 0, plan.inverter->overload.size());
    items(RecordKind::efficiencyPoint, 0, plan.inverter->efficiency.size());
  }
  return all;
}

RecordForm::RecordForm(const Plan& plan, const EntityRef& ref, const FormStyle& style, QWidget* parent)
    : QWidget(parent), ref_(ref), style_(style), plan_(plan) {
  setObjectName(QString::fromStdString(std::string(recordType(ref.kind).name) + "." + std::to_string(ref.id) +
                                       (ref.item >= 0 ? "." + std::to_string(ref.item) : std::string())));
  auto* column = new QVBoxLayout(this);
  const bool table = isCurvePoint(ref.kind);
  column->setContentsMargins(0, 0, 0, table ? 0 : 8);
  column->setSpacing(6);
  addHeading(plan);
  addWishes();
  addFields();
  if (table && removal_ != nullptr) grid_->addWidget(removal_, 1, row_, Qt::AlignTop);
  for (const Children& list : recordType(ref.kind).children) {
    if (!list.single && placeOf(list.kind) == nullptr) addList(list);
  }
  refresh(plan);
}

void RecordForm::addFields() {
  const std::span<const LabelGroup> groups = labelGroups(ref_.kind);
  std::vector<std::string_view> placed;
  for (const LabelGroup& group : groups) {
    addGroup(group);
    placed.insert(placed.end(), group.fields.begin(), group.fields.end());
  }
  startGrid();
  for (const Field& field : recordType(ref_.kind).fields) {
    if (field.kind == FieldKind::identity) continue;
    if (std::find(placed.begin(), placed.end(), field.key) == placed.end()) addField(field);
  }
}

void RecordForm::addGroup(const LabelGroup& group) {
  auto* column = static_cast<QVBoxLayout*>(layout());
  auto* heading = new QLabel(words(*style_.language, group.heading), this);
  heading->setFont(screenFont(Face::condensed, 12.5, Weight::medium));
  column->addSpacing(6);
  column->addWidget(heading);
  if (!group.fields.empty()) startGrid();
  for (const std::string_view key : group.fields) {
    if (const Field* field = fieldOf(ref_.kind, key)) addField(*field);
  }
  for (const Children& list : recordType(ref_.kind).children) {
    if (list.key != group.list) continue;
    auto* place = new QVBoxLayout;
    place->setSpacing(4);
    column->addLayout(place);
    places_.emplace_back(list.kind, place);
    addList(list);
  }
}

void RecordForm::startGrid() {
  grid_ = new QGridLayout;
  grid_->setHorizontalSpacing(4);
  grid_->setVerticalSpacing(4);
  if (!isCurvePoint(ref_.kind)) {
    grid_->setColumnMinimumWidth(0, kLabelWidth);
    grid_->setColumnStretch(2, 1);
  }
  static_cast<QVBoxLayout*>(layout())->addLayout(grid_);
  row_ = 0;
}

QVBoxLayout* RecordForm::placeOf(RecordKind items) const {
  for (const auto& [kind, place] : places_) {
    if (kind == items) return place;
  }
  return nullptr;
}

void RecordForm::addField(const Field& field) {
  const Language& language = *style_.language;
  const bool table = isCurvePoint(ref_.kind);
  auto* editor = new FieldEditor(field, style_, this);
  editor->setObjectName(QString::fromUtf8(field.key.data(), static_cast<qsizetype>(field.key.size())));
  auto* label = new QLabel(QString::fromStdString(fieldLabel(field, language)), this);
  label->setWordWrap(true);
  label->setToolTip(QString::fromStdString(fieldHelp(field, language)));
  label->setBuddy(editor->focusProxy());
  if (!table) {
    label->setMaximumWidth(scaled(kLabelWidth));
    // A label of one line stands on the line of its field; of more, it begins there.
    label->setMinimumHeight(scaled(kLeastTarget));
    label->setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  }
  QPalette colors = label->palette();
  colors.setColor(QPalette::WindowText, style_.palette.color(ColorRole::ink2));
  label->setPalette(colors);
  if (table) {
    // The first point has the heads of the columns.
    if (ref_.item == 0) {
      auto* head = new QHBoxLayout;
      head->setSpacing(2);
      head->addWidget(label, 1);
      head->addWidget(helpButton(field, language, this), 0, Qt::AlignTop);
      grid_->addLayout(head, 0, row_);
    } else {
      label->hide();
    }
    grid_->addWidget(editor, 1, row_, Qt::AlignTop);
    grid_->setColumnStretch(row_, 1);
  } else {
    grid_->addWidget(label, row_, 0, Qt::AlignTop);
    grid_->addWidget(helpButton(field, language, this), row_, 1, Qt::AlignTop);
    grid_->addWidget(editor, row_, 2);
  }
  ++row_;
  editors_.push_back(editor);
  editor->focused = [this](const Field& f) {
    if (focused) focused(f);
  };
  editor->entered = [this, editor](const FieldValue& value) {
    const Field& f = editor->field();
    Result<Plan> after = setField(plan_, ref_, f.key, value);
    if (!after) {
      editor->refuse(after.refusal());
      return;
    }
    const std::string key = std::string(recordType(ref_.kind).name) + "/" + std::to_string(ref_.id) + "/" +
                            std::to_string(ref_.item) + "/" + std::string(f.key);
    request(std::move(after),
            say(kStepSet, fieldLabel(f, *style_.language), nameInStep(plan_, ref_, *style_.language)),
            f.kind == FieldKind::text ? QString::fromStdString(key) : QString());
  };
}

void RecordForm::addHeading(const Plan& plan) {
  const Language& language = *style_.language;
  auto* row = new QHBoxLayout;
  row->setSpacing(4);
  heading_ = new QLabel(this);
  heading_->setObjectName(QStringLiteral("heading"));
  heading_->setFont(screenFont(Face::condensed, 13.5, Weight::medium));
  heading_->setTextFormat(Qt::PlainText);
  heading_->setWordWrap(true);
  row->addWidget(heading_, 2);
  place_ = new QLabel(this);
  place_->setTextFormat(Qt::PlainText);
  QPalette colors = place_->palette();
  colors.setColor(QPalette::WindowText, style_.palette.color(ColorRole::ink3));
  place_->setPalette(colors);
  row->addWidget(place_, 1);
  const auto button = [&](MessageId text, Icon icon, const QString& name) {
    auto* made = new QPushButton(buttonIcon(icon, style_.palette), words(language, text), this);
    made->setObjectName(name);
    made->setFlat(true);
    made->setAccessibleName(words(language, text) + QLatin1Char(' ') +
                            QString::fromStdString(entityName(plan, ref_, language)));
    row->addWidget(made);
    return made;
  };
  if (canCopy(ref_.kind)) {
    QPushButton* copy = button(kCopy, Icon::sheet, QStringLiteral("copy"));
    connect(copy, &QPushButton::clicked, this, [this] {
      const Language& said = *style_.language;
      Result<Plan> after = ref_.kind == RecordKind::circuit ? copyCircuit(plan_, CircuitId{ref_.id})
                           : ref_.kind == RecordKind::load  ? copyLoad(plan_, LoadId{ref_.id})
                           : ref_.kind == RecordKind::panel ? copyPanel(plan_, PanelId{ref_.id})
                                                            : copyBreaker(plan_, BreakerId{ref_.id});
      request(std::move(after), say(kStepCopy, entityName(plan_, ref_, said)));
    });
  }
  if (canRemove(ref_.kind)) {
    removal_ = button(kRemove, Icon::remove, QStringLiteral("delete"));
    connect(removal_, &QPushButton::clicked, this, [this] {
      const Message name = say(kStepRemove, entityName(plan_, ref_, *style_.language));
      request(isRow(ref_.kind) ? removeItem(plan_, ref_) : remove(plan_, ref_), name);
    });
  }
  if (isCurvePoint(ref_.kind)) {
    heading_->hide();
    place_->hide();
    removal_->setText(QString());
    removal_->setToolTip(removal_->accessibleName());
    delete row;  // the button gets its place in the table
    return;
  }
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
}

QPushButton* RecordForm::wishButton(MessageId text, Wish wish, const QString& name) {
  const Language& language = *style_.language;
  auto* made = new QPushButton(words(language, text), this);
  made->setObjectName(name);
  made->setAccessibleName(words(language, text) + QLatin1String(": ") +
                          QString::fromStdString(entityName(plan_, ref_, language)));
  connect(made, &QPushButton::clicked, this, [this, made, wish] {
    if (wished) wished(wish, made->mapToGlobal(QPoint(0, made->height())));
  });
  return made;
}

void RecordForm::addWishes() {
  const bool whole =
      ref_.kind == RecordKind::inverter || ref_.kind == RecordKind::battery || ref_.kind == RecordKind::panel;
  if (!whole && ref_.kind != RecordKind::load) return;
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  if (whole) row->addWidget(wishButton(kTake, Wish::take, QStringLiteral("takeFromList")));
  row->addWidget(wishButton(kKeep, Wish::keep, QStringLiteral("keepInList")));
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
}

void RecordForm::addList(const Children& list) {
  const Language& language = *style_.language;
  const std::string kind = kindName(list.kind, language);
  auto* add = new QPushButton(buttonIcon(Icon::add, style_.palette), words(language, kAdd, kind), this);
  add->setObjectName(QStringLiteral("add.") + QString::fromStdString(std::string(list.key)));
  const std::string key(list.key);
  connect(add, &QPushButton::clicked, this, [this, key, kind] {
    const Message name = say(kStepAdd, kind);
    if (key == "loads")
      request(addLoad(plan_, CircuitId{ref_.id}, Load{}), name);
    else
      request(addItem(plan_, ref_, key), name);
  });
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  if (key == "loads")
    row->addWidget(wishButton(kFromCatalogue, Wish::fromCatalogue, QStringLiteral("fromCatalogue")));
  row->addWidget(add);
  static_cast<QVBoxLayout*>(layout())->addLayout(row);
}

void RecordForm::request(Result<Plan> after, const Message& name, const QString& mergeWith) {
  if (!after) {
    if (refused) refused(after.refusal());
    return;
  }
  if (edited) edited({std::move(after).value(), name, mergeWith});
}

void RecordForm::refresh(const Plan& plan) {
  plan_ = plan;
  const void* record = findRecord(plan, ref_);
  if (record == nullptr) return;
  const Language& language = *style_.language;
  const bool ofCircuit = ref_.kind == RecordKind::breaker;
  heading_->setText(
      QString::fromStdString(ofCircuit ? kindName(ref_.kind, language) : entityName(plan, ref_, language)));
  const bool placed = ref_.kind == RecordKind::circuit || ref_.kind == RecordKind::breaker;
  place_->setText(placed ? QString::fromStdString(placeName(plan, ref_, language)) : QString());
  for (FieldEditor* editor : editors_) editor->refresh(plan, editor->field().get(record));
}

FieldEditor* RecordForm::editor(std::string_view key) const {
  for (FieldEditor* editor : editors_) {
    if (editor->field().key == key) return editor;
  }
  return nullptr;
}

void RecordForm::focusField(std::string_view key) {
  FieldEditor* found = key.empty() && !editors_.empty() ? editors_.front() : editor(key);
  if (found != nullptr) found->setFocus(Qt::TabFocusReason);
}

}  // namespace stayalight
