// Which holes for how much power: combinations by torque.
#pragma once

#include <QWidget>
#include <memory>

#include "geometry/edits/edit.h"
#include "geometry/trials/power_map.h"

class QProgressBar;
class QPushButton;

namespace bolthole {

class Card;
class ReadTable;
class ToneLabel;

/// A row a combination, a column a torque, the 60 ft in each cell: the quickest of a torque bold with a disc,
/// what can't be told apart from it with "≈". Over it the bands as one line, under it the cell pointed at or
/// chosen in words. Computes nothing: it says when it is seen.
class PowerMapView : public QWidget {
    Q_OBJECT
  public:
    explicit PowerMapView(QWidget* parent = nullptr);

    void showMap(const std::shared_ptr<const PowerMap>& map, const std::shared_ptr<const Car>& car,
                 Units units);
    /// The map is being computed: how far, 0 to 1.
    void showProgress(double share);
    /// Nothing to show, and why.
    void showMessage(const QString& why);
    /// It was cancelled; a button asks for it again.
    void showStopped();
    /// A cell in words: "Middle with 534 lbf·ft: 60 ft 1.982 s, the quickest; ...".
    [[nodiscard]] QString cellWords(int row, int column) const;

    /// For tests.
    [[nodiscard]] ReadTable& table() const { return *table_; }
    [[nodiscard]] QString bands() const;
    [[nodiscard]] QString message() const;
    [[nodiscard]] QPushButton* cancelButton() const { return cancel_; }

  signals:
    void boltRequested(
        const bolthole::Edit& edit);  ///< Enter or a double click: bolt to the row's combination
    void seen(bool isSeen);
    void cancelled();
    void requested();  ///< "Try again"

  protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void orderRows();
    void showRows();
    void shareColumns();
    void showCell(int row, int column);
    void tell(int row, int column);
    void bolt(int row);
    void look(bool hasMap, bool isWorking);
    [[nodiscard]] QString torqueText(std::size_t power) const;

    std::shared_ptr<const PowerMap> map_;
    std::shared_ptr<const Car> car_;
    Units units_ = Units::inch;
    std::vector<std::size_t> order_;  // combinations, a row each
    Card* card_;
    ToneLabel* bands_;
    ToneLabel* message_;
    ToneLabel* told_;
    ToneLabel* key_;
    ReadTable* table_;
    QProgressBar* progress_;
    QPushButton* cancel_;
};

}  // namespace bolthole
