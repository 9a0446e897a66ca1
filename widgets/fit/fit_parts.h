// The painted parts of a FitCard: how much of a number the passes told, and predicted against run.
#pragma once

#include <QWidget>
#include <vector>

#include "geometry/fit/launch_fit.h"

namespace bolthole {

/// A bar from 0 to 100 %, a thin one beside a row of text.
class ShareBar : public QWidget {
    Q_OBJECT
  public:
    explicit ShareBar(QWidget* parent = nullptr);

    /// `percent` is held within 0 and 100.
    void showShare(double percent);
    [[nodiscard]] QSize sizeHint() const override { return {44, 16}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double percent_ = 0;
};

/// Each pass as it was predicted from the others, across with its ± at 95 %, against as it was run, up; the
/// diagonal is where both agree. A pass that the fit took for a mistake is hollow, one outside its ± is
/// marked.
class PredictionPlot : public QWidget {
    Q_OBJECT
  public:
    explicit PredictionPlot(QWidget* parent = nullptr);

    /// `names`: what each is called, for its tool tip.
    void showPasses(std::vector<FittedPass> passes, std::vector<QString> names);
    [[nodiscard]] QSize sizeHint() const override { return {380, 170}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {220, 130}; }

  protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

  private:
    [[nodiscard]] QRectF plot() const;
    [[nodiscard]] QPointF placeOf(double predicted, double run) const;
    void paintAxes(QPainter& painter) const;
    void paintPass(QPainter& painter, const FittedPass& pass) const;
    [[nodiscard]] QString nameUnder(QPointF at) const;

    std::vector<FittedPass> passes_;
    std::vector<QString> names_;
    double low_ = 0;  // s, of both axes
    double high_ = 1;
};

}  // namespace bolthole
