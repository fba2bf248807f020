#pragma once

// Under the backup board, always in the same place: what the selected breaker is, or what the drag would
// change.

#include <optional>
#include <vector>

#include "core/assess/assess.h"
#include "ui/board/move.h"
#include "ui/style/painted_widget.h"
#include "ui/style/palette.h"

namespace stayalight {

struct EffectRow {
  QString label, now, after, note;
  std::optional<Verdict> verdict;
  std::optional<Grade> grade;
};
struct Effect {
  QString title, place;
  bool moving = false;
  std::vector<EffectRow> rows;
};
/// Both legs of the backup subpanel, the worst starts and the hours as they are.
[[nodiscard]] Effect wholeBackup(const Assessment& assessment, const Language& language);
/// The figures of one breaker as it stands; without one, of the backup subpanel.
[[nodiscard]] Effect effectOf(const Plan& plan, const Assessment& assessment, BreakerId breaker,
                              const Language& language);
/// Both legs, the worst start, hours: now and after the move; or the reason why it is not possible.
[[nodiscard]] Effect effectOf(const Plan& plan, const Assessment& now, const BoardMove& move,
                              const Result<Plan>& moved, const Assessment* after, const Language& language);

class EffectCard : public PaintedWidget {
 public:
  explicit EffectCard(QWidget* parent = nullptr);
  void show(const Effect& effect, const Palette& palette, const Language& language);
  [[nodiscard]] const Effect& effect() const { return effect_; }

 protected:
  [[nodiscard]] QSizeF wanted() const override;
  [[nodiscard]] QSizeF least() const override;
  void paint(QPainter& painter) override;

 private:
  Effect effect_;
  Palette palette_{Theme::light};
  QString nowHead_, afterHead_;
  std::vector<QString> verdicts_, grades_;
};

}  // namespace stayalight
