// The engine's torque by speed: its curve, its rows, and a way in for a whole dyno sheet.
#pragma once

#include <QWidget>
#include <vector>

#include "geometry/car/damping.h"
#include "geometry/units/text.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/fields/sheet_hub.h"

class QGridLayout;

namespace bolthole {

class NumberField;

/// Torque over speed with its peak in words.
class TorqueChart : public CurveChart {
    Q_OBJECT
  public:
    explicit TorqueChart(QWidget* parent = nullptr);

    void showCurve(const std::vector<TorquePoint>& torque, Units units);
};

/// Every change is one SetTorque.
class TorqueSection : public QWidget {
    Q_OBJECT
  public:
    explicit TorqueSection(SheetHub& hub, QWidget* parent = nullptr);

    void showTorque(const std::vector<TorquePoint>& torque, NumberStyle style);
    /// Enters the rows, or the way in where there are none.
    void enter();
    void showRows(bool shown);
    [[nodiscard]] bool showsRows() const;

  signals:
    void rowsShown(bool shown);

  private:
    struct Row {
        NumberField* speed;
        NumberField* torque;
        QWidget* remove;
    };
    void addRow();
    void dropRow();
    void change(std::size_t row, double TorquePoint::*number, double value);
    void removeRow(std::size_t row);
    void appendRow();
    void paste();
    [[nodiscard]] NumberField* field(std::size_t row, double TorquePoint::*number, Quantity quantity,
                                     const QString& name);

    SheetHub& hub_;
    std::vector<TorquePoint> torque_;
    NumberStyle style_;
    TorqueChart* chart_;
    QWidget* box_;
    QGridLayout* grid_;
    QAbstractButton* toggle_;
    QAbstractButton* paste_;
    std::vector<Row> rows_;
};

}  // namespace bolthole
