// A rod's length and adjuster in the car sheet, and the question which is right where length and holes
// disagree.
#pragma once

#include <QWidget>

#include "widgets/fields/forward_finder.h"
#include "widgets/fields/limit_part.h"
#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {

/// Asks which of two measurements is right: what would shift, and a button for each answer.
class LengthQuestion : public QWidget {
    Q_OBJECT
  public:
    explicit LengthQuestion(const QString& linkName, QWidget* parent = nullptr);

    /// Asks, or hides where `words` is empty.
    void ask(const QString& words);

  signals:
    void lengthIsRight();
    void holesAreRight();

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QLabel* words_;
};

/// Length, written or fitted; thread and ends of the adjuster; the rod's limits; the way from a taped length
/// to a fore-aft figure. For rods only.
class LengthPart : public QWidget {
    Q_OBJECT
  public:
    LengthPart(SheetHub& hub, int link, QWidget* parent = nullptr);

    /// Brings everything but the hub's numbers up to date.
    void refresh();

  private:
    void addLength();
    void addAdjuster();
    void addFinder();
    void chooseAdjuster(int index);
    void refreshQuestion();
    void refreshAdjuster();
    [[nodiscard]] const Link& link() const;

    SheetHub& hub_;
    int link_;
    NumberField* length_ = nullptr;
    QAbstractButton* clear_ = nullptr;
    LengthQuestion* question_ = nullptr;
    CalmCombo* adjuster_ = nullptr;
    NumberRow* pitch_ = nullptr;
    ToneLabel* threads_ = nullptr;
    LimitPart* limits_ = nullptr;
    ForwardFinder* finder_ = nullptr;
    double shownPitch_ = -1;
};

/// Thread pitch of a 3/4-16 UNF thread, m: 16 threads per inch (ASME B1.1, from memory).
inline constexpr double kUsualPitch = kMetresPerInch / 16.0;

}  // namespace bolthole
