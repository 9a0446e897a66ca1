// The row at the end of the log in which the next pass is entered.
#pragma once

#include <QDateTime>
#include <QWidget>
#include <array>
#include <functional>

#include "geometry/edits/edit.h"
#include "widgets/pages/days/pass_book.h"
#include "widgets/pages/days/pass_number_field.h"

class QLabel;
class QToolButton;

namespace bolthole {

class PassTable;

/// The next pass as it would follow on the last: the same place, surface, pressures and launch rpm; on the
/// same day also its air and temperatures. Nothing that the clock or the eye said. `now` is its day and time.
[[nodiscard]] Pass nextPass(const std::vector<Pass>& passes, const QDateTime& now);

/// Copies the last pass; what is typed over it and Enter enter the next. Tab goes on, Esc leaves. Its parts
/// stand under the table's columns, each field under its column's words.
class PassEntry : public QWidget {
    Q_OBJECT
  public:
    /// Both must outlive the row.
    PassEntry(const PassBook& book, const PassTable& table, QWidget* parent = nullptr);

    /// The book or the car on the bench changed: what is being typed stays.
    void refresh(const Car& bench);
    /// Goes to the first field that is new in a pass: the 60 ft time, as pressures and launch rpm stay those
    /// of the last one until something is typed over them; before the first pass to the pressures.
    void enter();
    /// Emits entered() where a 60 ft time was typed and all can be read; otherwise what is typed stays.
    void commit();
    /// Forgets what is typed.
    void restore();
    /// Reads the clock by it; tests have one of their own.
    void setClock(std::function<QDateTime()> clock) { clock_ = std::move(clock); }
    /// The pass as it stands in the row.
    [[nodiscard]] Pass pass() const;
    [[nodiscard]] PassNumberField* field(PassField field) const;
    /// Puts the parts under the columns again.
    void alignToColumns();

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    void entered(const bolthole::Edit& edit);
    void howToRequested(bolthole::PassField field);  ///< F1 in a field
    void left();                                     ///< Esc, or up from the row
    void detailsRequested(
        const bolthole::Pass& pass);  ///< the pass so far, to be filled in by its whole form

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    static constexpr int kFields = 4;
    [[nodiscard]] bool isTyped() const;
    void take();
    void showHint();
    void showChanges(const Car& bench);

    const PassBook& book_;
    const PassTable& table_;
    std::function<QDateTime()> clock_;
    Pass next_;
    QString changesWords_;
    std::array<PassNumberField*, kFields> fields_;
    std::array<QLabel*, kFields> captions_;  // the columns' heads once more, which may be a long log above
    QLabel* number_;
    QLabel* time_;
    QLabel* letter_;
    QLabel* changes_;
    QLabel* rebound_;
    QLabel* hint_;
    QToolButton* details_;
};

}  // namespace bolthole
