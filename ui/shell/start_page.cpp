#include "ui/shell/start_page.h"

#include <QtGui/QPainter>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QToolButton>
#include <QtWidgets/QVBoxLayout>

#include "core/assess/assess.h"
#include "ui/board/layout.h"
#include "ui/board/paint.h"
#include "ui/inspector/entity_text.h"
#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kWelcome{"shell.start.welcome"};
constexpr MessageId kIntro{"shell.start.intro"};
constexpr MessageId kGo{"shell.start.go"};
constexpr MessageId kGoNote{"shell.start.go_note"};
constexpr MessageId kSample{"shell.start.sample"};
constexpr MessageId kSampleNote{"shell.start.sample_note"};
constexpr MessageId kOpen{"shell.start.open"};
constexpr MessageId kOpenNote{"shell.start.open_note"};
constexpr MessageId kDraws{"shell.start.draws"};
constexpr MessageId kCautionLine{"shell.caution_line"};
constexpr std::array<MessageId, 5> kSteps = {
    MessageId{"shell.start.service"}, MessageId{"shell.start.main"}, MessageId{"shell.start.backup"},
    MessageId{"shell.start.inverter"}, MessageId{"shell.start.battery"}};

struct Asked {
  int step;
  RecordKind kind;
  PanelRole role;
  std::string_view key;
};
// The shortest set of answers from which legs, feeder and hours can be estimated.
constexpr Asked kAsked[] = {
    {0, RecordKind::site, PanelRole::main, "name"},
    {0, RecordKind::site, PanelRole::main, "service_V"},
    {0, RecordKind::site, PanelRole::main, "code_edition"},
    {1, RecordKind::panel, PanelRole::main, "main_breaker_A"},
    {1, RecordKind::panel, PanelRole::main, "spaces"},
    {1, RecordKind::panel, PanelRole::main, "tandems"},
    {2, RecordKind::panel, PanelRole::backup, "bus_A"},
    {2, RecordKind::panel, PanelRole::backup, "spaces"},
    {2, RecordKind::transfer, PanelRole::main, "arrangement"},
    {3, RecordKind::inverter, PanelRole::main, "continuous_W"},
    {3, RecordKind::inverter, PanelRole::main, "marginal_efficiency"},
    {3, RecordKind::inverter, PanelRole::main, "idle_W"},
    {4, RecordKind::battery, PanelRole::main, "nominal_kWh"},
    {4, RecordKind::battery, PanelRole::main, "packs"},
    {4, RecordKind::battery, PanelRole::main, "floor"},
};

}  // namespace

/// The main panel of the draft.
class DraftPicture : public QWidget {
 public:
  DraftPicture(const FormStyle& style, QWidget* parent) : QWidget(parent), style_(style) {
    setMinimumSize(scaled(260), scaled(200));
  }
  void show(const Plan& plan) {
    plan_ = plan;
    assessment_ = assess(plan);
    update();
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    const Panel* main = mainPanel(plan_);
    if (main == nullptr) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    BoardOptions options;
    options.rowHeight = std::clamp((height() - kBoardHead - kBoardFoot) / std::max(1, rowCount(*main)),
                                   kSmallestRow * 0.6, kRowHeight);
    options.rowHeight = std::max(options.rowHeight, kSmallestRow);
    const BoardLayout board = stayalight::layout(plan_, assessment_, main->id, *style_.language, options);
    const double scale = std::min({1.0, width() / board.size.width(), height() / board.size.height()});
    painter.scale(scale, scale);
    stayalight::paint(painter, board, style_.palette);
  }

 private:
  FormStyle style_;
  Plan plan_;
  Assessment assessment_;
};

StartPage::StartPage(FormStyle style, QWidget* parent) : QWidget(parent), style_(style), draft_(newPlan()) {
  setObjectName(QStringLiteral("startPage"));
  new QVBoxLayout(this);
  layout()->setContentsMargins(0, 0, 0, 0);
}

void StartPage::setStyle(const FormStyle& style) {
  style_ = style;
  stale_ = true;
  if (isVisible()) build();
}

void StartPage::showEvent(QShowEvent* event) {
  if (stale_) build();
  QWidget::showEvent(event);
  // Whoever begins a plan types its name first.
  if (!questions_.empty()) questions_.front().editor->setFocus();
}

void StartPage::build() {
  stale_ = false;
  const Language& language = *style_.language;
  questions_.clear();
  if (QLayoutItem* old = layout()->takeAt(0)) {
    if (old->widget() != nullptr) old->widget()->deleteLater();
    delete old;
  }
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  auto* page = new QWidget(scroll);
  page->setObjectName(QStringLiteral("startContents"));
  scroll->setWidget(page);
  layout()->addWidget(scroll);
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(48, 24, 48, 12);
  column->setSpacing(8);
  const auto label = [&](QWidget* parent, MessageId id, double size, Weight weight, ColorRole role) {
    auto* made = new QLabel(words(language, id), parent);
    made->setFont(screenFont(Face::condensed, size, weight));
    made->setWordWrap(true);
    QPalette colors = made->palette();
    colors.setColor(QPalette::WindowText, style_.palette.color(role));
    made->setPalette(colors);
    return made;
  };
  column->addWidget(label(page, kWelcome, 34, Weight::medium, ColorRole::ink));
  column->addWidget(label(page, kIntro, 14, Weight::regular, ColorRole::ink2));
  auto* middle = new QHBoxLayout;
  middle->setSpacing(32);
  column->addLayout(middle, 1);
  auto* form = new QGridLayout;
  form->setHorizontalSpacing(16);
  form->setVerticalSpacing(2);
  middle->addLayout(form, 3);
  int row = 0, step = -1, at = 0;
  for (const Asked& asked : kAsked) {
    if (asked.step != step) {
      step = asked.step;
      if (row > 0) {
        row += 3;
        form->setRowMinimumHeight(row - 1, 8);
      }
      at = 0;
      auto* head = new QLabel(QString(QString::number(step + 1) + QStringLiteral("   ") +
                                      words(language, kSteps[static_cast<std::size_t>(step)])),
                              page);
      head->setFont(screenFont(Face::condensed, 14, Weight::medium));
      form->addWidget(head, row, 0, 1, 3);
      ++row;
    }
    EntityRef ref{asked.kind};
    if (asked.kind == RecordKind::panel) {
      const Panel* panel = panelInRole(draft_, asked.role);
      if (panel == nullptr) continue;
      ref.id = panel->id.number;
    }
    const Field* field = fieldOf(asked.kind, asked.key);
    auto* editor = new FieldEditor(*field, style_, page);
    editor->setObjectName(QString::fromStdString(std::string(recordType(asked.kind).name) + "." +
                                                 std::to_string(ref.id) + "." + std::string(asked.key)));
    auto* title = new QLabel(QString::fromStdString(fieldLabel(*field, language)), page);
    title->setBuddy(editor->focusProxy());
    title->setToolTip(QString::fromStdString(fieldHelp(*field, language)));
    auto* named = new QHBoxLayout;
    named->setSpacing(4);
    named->addWidget(title);
    named->addWidget(helpButton(*field, language, page));
    named->addStretch(1);
    form->addLayout(named, row, at);
    form->addWidget(editor, row + 1, at, Qt::AlignTop);
    form->setColumnStretch(at, 1);
    ++at;
    editor->entered = [this, ref, editor](const FieldValue& value) {
      const Result<Plan> next = setField(draft_, ref, editor->field().key, value);
      if (!next) {
        editor->refuse(next.refusal());
        return;
      }
      draft_ = next.value();
      refresh();
    };
    questions_.push_back({ref, editor});
  }
  row += 3;
  auto* go = new QPushButton(words(language, kGo), page);
  go->setObjectName(QStringLiteral("startPlan"));
  go->setDefault(true);
  go->setMinimumHeight(scaled(34));
  go->setFont(screenFont(Face::condensed, 14, Weight::medium));
  connect(go, &QPushButton::clicked, this, [this] { Q_EMIT planReady(draft_); });
  form->setRowMinimumHeight(row - 1, 18);
  form->addWidget(go, row, 0);
  form->addWidget(label(page, kGoNote, 12, Weight::regular, ColorRole::ink2), row, 1, 1, 2);
  form->setRowStretch(row + 1, 1);
  auto* right = new QVBoxLayout;
  right->addWidget(label(page, kDraws, 12, Weight::regular, ColorRole::ink2));
  picture_ = new DraftPicture(style_, page);
  right->addWidget(picture_, 1);
  middle->addLayout(right, 2);
  auto* others = new QHBoxLayout;
  others->setSpacing(16);
  const auto card = [&](MessageId text, MessageId note, Icon icon, const QString& name) {
    auto* button =
        new QPushButton(buttonIcon(icon, style_.palette),
                        QString(words(language, text) + QLatin1Char('\n') + words(language, note)), page);
    button->setObjectName(name);
    button->setIconSize(QSize(24, 24));
    button->setMinimumHeight(scaled(54));
    others->addWidget(button);
    return button;
  };
  QPushButton* sample = card(kSample, kSampleNote, Icon::panel, QStringLiteral("openSample"));
  QPushButton* open = card(kOpen, kOpenNote, Icon::folder, QStringLiteral("openPlan"));
  connect(sample, &QPushButton::clicked, this, &StartPage::sampleRequested);
  connect(open, &QPushButton::clicked, this, &StartPage::openRequested);
  column->addLayout(others);
  column->addWidget(label(page, kCautionLine, 11.5, Weight::regular, ColorRole::ink2));
  refresh();
}

FieldEditor* StartPage::editor(RecordKind kind, std::string_view key, std::int64_t id) const {
  for (const Question& question : questions_) {
    if (question.ref.kind == kind && question.editor->field().key == key &&
        (id == 0 || question.ref.id == id))
      return question.editor;
  }
  return nullptr;
}

void StartPage::refresh() {
  for (const Question& question : questions_) {
    if (const void* record = findRecord(draft_, question.ref))
      question.editor->refresh(draft_, question.editor->field().get(record));
  }
  picture_->show(draft_);
}

}  // namespace stayalight
