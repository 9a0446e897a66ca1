// A paint device that takes note of the texts painted on it: for tests of what stands where.
#pragma once

#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QString>
#include <vector>

namespace bolthole::test {

/// Takes note of each text that is painted on it, and of nothing else.
class TextNotes : public QPaintDevice, public QPaintEngine {
  public:
    struct Note {
        QString text;
        QRectF box;
    };
    explicit TextNotes(QSize size) : QPaintEngine(QPaintEngine::AllFeatures), size_(size) {}
    /// In the order painted; boxes in device pixels.
    [[nodiscard]] const std::vector<Note>& notes() const { return notes_; }

    [[nodiscard]] QPaintEngine* paintEngine() const override { return const_cast<TextNotes*>(this); }
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    void drawPath(const QPainterPath&) override {}
    void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        const QRectF box(at.x(), at.y() - item.ascent(), item.width(), item.ascent() + item.descent());
        notes_.push_back({item.text(), painter()->combinedTransform().mapRect(box)});
    }
    [[nodiscard]] Type type() const override { return User; }

  protected:
    [[nodiscard]] int metric(PaintDeviceMetric what) const override {
        constexpr int kDotsPerInch = 96;
        switch (what) {
            case PdmWidth:
                return size_.width();
            case PdmHeight:
                return size_.height();
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return kDotsPerInch;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(devicePixelRatioFScale());
            default:
                return 0;
        }
    }

  private:
    QSize size_;
    std::vector<Note> notes_;
};

}  // namespace bolthole::test
