#include "widgets/papers/sheets/setup_card.h"

#include <array>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/sheets/paper_kit.h"
#include "widgets/papers/sheets/setup_facts.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/sure_words.h"

namespace bolthole {

namespace {

using kit_type::kSmall;
using kit_type::kText;

constexpr PrintType kCard{3.0, false};
constexpr PrintType kCardStrong{3.0, true};
constexpr double kCardRow = 7.2;  // mm

QString cardCaution() {
    return tr(
        "Figures follow from what was measured on this car; on another they differ. They say nothing of the "
        "strength "
        "of a bracket, link or weld: that is for a qualified person.");
}

/// Makes the card's rows.
class CardBlocks {
  public:
    explicit CardBlocks(const PrintFonts& fonts) : fonts_(fonts) {}

    // Cells at shares of the width; the first plain, the others strong.
    [[nodiscard]] SheetBlock row(const QStringList& cells, const std::vector<double>& shares, PrintType first,
                                 PrintType other) const {
        SheetBlock block;
        block.height = kCardRow;
        block.paint = [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
            painter.setPen(Qt::black);
            for (qsizetype cell = 0; cell < cells.size(); ++cell) {
                const auto at = static_cast<std::size_t>(cell);
                const double end = at + 1 < shares.size() ? shares[at + 1] : 1.0;
                const PrintType type = cell == 0 ? first : other;
                fonts.draw(painter, {box.left() + shares[at] * box.width(), box.bottom() - 2.1},
                           fonts.elided(cells[cell], type, (end - shares[at]) * box.width() - 2), type);
            }
            painter.setPen(QPen(QColor(125, 125, 125), kThinnestLine, Qt::SolidLine, Qt::FlatCap));
            painter.drawLine(box.bottomLeft(), box.bottomRight());
        };
        return block;
    }

    // Two facts a row.
    void facts(std::vector<SheetBlock>& blocks, const QString& head, const std::vector<SetupFact>& of,
               const QString& aside = {}) const {
        if (of.empty()) {
            return;
        }
        blocks.push_back(headingBlock(head, aside, fonts_));
        for (std::size_t at = 0; at < of.size(); at += 2) {
            blocks.push_back(pair(of[at], at + 1 < of.size() ? &of[at + 1] : nullptr));
        }
    }

  private:
    [[nodiscard]] SheetBlock pair(const SetupFact& left, const SetupFact* right) const {
        std::vector<SetupFact> both{left};
        if (right != nullptr) {
            both.push_back(*right);
        }
        SheetBlock block;
        block.height = kCardRow;
        block.paint = [both, &fonts = fonts_](QPainter& painter, const QRectF& box) {
            constexpr double kGap = 8;
            const double half = (box.width() - kGap) / 2;
            for (std::size_t at = 0; at < both.size(); ++at) {
                const double from = box.left() + static_cast<double>(at) * (half + kGap);
                const double value = fonts.width(both[at].value, kCardStrong);
                painter.setPen(Qt::black);
                fonts.draw(painter, {from, box.bottom() - 2.1},
                           fonts.elided(both[at].name, kCard, half - value - 2), kCard);
                fonts.draw(painter, {from + half, box.bottom() - 2.1}, both[at].value, kCardStrong,
                           Qt::AlignRight);
                painter.setPen(QPen(QColor(125, 125, 125), kThinnestLine, Qt::SolidLine, Qt::FlatCap));
                painter.drawLine(QPointF(from, box.bottom()), QPointF(from + half, box.bottom()));
            }
        };
        return block;
    }

    const PrintFonts& fonts_;
};

}  // namespace

struct SetupCard::Parts {
    Parts(const Car& car, NumberStyle style, QDate of, const QPageLayout& layout)
        : facts(setupFactsOf(car, style, true)), date(of), frame(fonts, paintable(layout), cardCaution()) {
        const CardBlocks make(fonts);
        const std::vector<double> shares{0, 0.34, 0.56, 0.78};
        if (!facts.starting.isEmpty()) {
            blocks.push_back(wordsBlock(facts.starting, kText, frame.body().width(), fonts));
        }
        blocks.push_back(headingBlock(tr("Links"), {}, fonts));
        blocks.push_back(make.row({QString(), tr("chassis hole"), tr("axle hole"), tr("center to center")},
                                  shares, kSmall, kSmall));
        for (const SetupLink& link : facts.links) {
            blocks.push_back(make.row(
                {link.name, link.chassis, link.axle, link.length.isEmpty() ? QString(kDash) : link.length},
                shares, kCard, kCardStrong));
        }
        make.facts(blocks, tr("Clicks"), facts.clicks);
        make.facts(blocks, tr("Tire pressures"), facts.pressures, facts.pressuresFrom);
        make.facts(blocks, tr("Weights"), facts.weights);
        make.facts(blocks, tr("Launch"), facts.launch);
        make.facts(blocks, tr("What it gives at ride"), facts.figures,
                   tr("CG height %1").arg(cgHeightWords(car, style)));
        blocks.push_back(wordsBlock(sureMeaning(car, style.units), kText, frame.body().width(), fonts));
        pages = flowed(blocks, frame.body().size());
    }
    Parts(const Parts&) = delete;

    SetupFacts facts;
    QDate date;
    PrintFonts fonts;
    PaperFrame frame;
    std::vector<SheetBlock> blocks;
    std::vector<FlowPage> pages;
};

SetupCard::SetupCard(const Car& car, NumberStyle style, QDate date, const QPageLayout& page)
    : parts_(std::make_unique<Parts>(car, style, date, page)) {}

SetupCard::~SetupCard() = default;
SetupCard::SetupCard(SetupCard&&) noexcept = default;

int SetupCard::sheetCount() const {
    return static_cast<int>(parts_->pages.size());
}

void SetupCard::paintSheet(QPainter& painter, int index) const {
    const SetupFacts& facts = parts_->facts;
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const QString car = facts.car.isEmpty() ? tr("Setup card") : tr("%1: setup card").arg(facts.car);
    const QString setup = facts.setup.isEmpty() ? QString() : facts.setup + QStringLiteral(", ");
    parts_->frame.paint(painter, car, setup + parts_->date.toString(Qt::ISODate));
    for (const PlacedBlock& placed : parts_->pages[static_cast<std::size_t>(index)]) {
        placed.block->paint(painter, placed.box.translated(parts_->frame.body().topLeft()));
    }
    painter.restore();
}

}  // namespace bolthole
