#include "widgets/papers/sheets/setup_card.h"

#include <algorithm>
#include <iterator>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/kit/flowed_paper.h"
#include "widgets/papers/kit/paper_text.h"
#include "widgets/papers/sheets/setup_facts.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

constexpr PrintType kCard{3.0, false};
constexpr double kCardPad = 0.9;  // mm, above and below a row

QString cardCaution() {
    return tr(
        "Figures follow from what was measured on this car; on another they differ. They say nothing of the "
        "strength "
        "of a bracket, link or weld: that is for a qualified person.");
}

class LaidCard : public FlowedPaper {
  public:
    LaidCard(SetupFacts of, const Car& car, NumberStyle style, QDate date, const QPageLayout& page)
        : FlowedPaper(page, {}, of.starting, cardCaution()), facts_(std::move(of)), date_(date) {
        addLinks();
        addFacts(tr("Clicks"), facts_.clicks);
        addFacts(tr("Tire pressures"), facts_.pressures, facts_.pressuresFrom);
        addFacts(tr("Weights"), facts_.weights);
        addFacts(tr("Launch"), facts_.launch);
        addFacts(tr("What it gives at ride"), facts_.figures,
                 tr("CG height %1").arg(cgHeightWords(car, style)));
        blocks_.push_back(
            wordsBlock(uncertaintyMeaning(car, style.units), kit_type::kText, width(), fonts()));
        flow(std::move(blocks_));
    }

  private:
    [[nodiscard]] SheetTitle title(int /*index*/) const override {
        SheetTitle title = titleOf(facts_.car.toStdString(), tr("setup card"));
        const QString setup = facts_.setup.isEmpty() ? QString() : facts_.setup + QStringLiteral(", ");
        title.asides = {{setup + date_.toString(Qt::ISODate)}};
        return title;
    }

    void addTable(const QString& heading, const QString& aside, const TextTable& table) {
        blocks_.push_back(headingBlock(heading, aside, fonts()));
        std::ranges::move(LaidTable::blocks(table, width(), fonts()), std::back_inserter(blocks_));
    }

    void addLinks() {
        TextTable table;
        table.type = kCard;
        table.headType = kit_type::kSmall;
        table.pad = kCardPad;
        table.columns = {{.share = 0.34},
                         {.share = 0.22, .isBold = true},
                         {.share = 0.22, .isBold = true},
                         {.share = 0.22, .isBold = true}};
        table.head = {{QString(), tr("chassis hole"), tr("axle hole"), tr("center to center")}};
        for (const SetupLink& link : facts_.links) {
            table.rows.push_back(
                {link.name, link.chassis, link.axle, link.length.isEmpty() ? QString(kDash) : link.length});
        }
        addTable(tr("Links"), {}, table);
    }

    // Two facts a row.
    void addFacts(const QString& head, const std::vector<SetupFact>& of, const QString& aside = {}) {
        if (of.empty()) {
            return;
        }
        TextTable table;
        table.type = kCard;
        table.pad = kCardPad;
        table.gap = 2;
        table.columns = {{.share = 0.3},
                         {.align = Qt::AlignRight, .share = 0.2, .isBold = true},
                         {.share = 0.3, .before = 6},
                         {.align = Qt::AlignRight, .share = 0.2, .isBold = true}};
        for (std::size_t at = 0; at < of.size(); at += 2) {
            const SetupFact second = at + 1 < of.size() ? of[at + 1] : SetupFact{};
            table.rows.push_back({of[at].name, of[at].value, second.name, second.value});
        }
        addTable(head, aside, table);
    }

    SetupFacts facts_;
    QDate date_;
    std::vector<SheetBlock> blocks_;
};

}  // namespace

SetupCard::SetupCard(const Car& car, NumberStyle style, QDate date, const QPageLayout& page)
    : PrintedSheets(
          std::make_unique<const LaidCard>(setupFactsOf(car, style, true), car, style, date, page)) {}

}  // namespace bolthole
