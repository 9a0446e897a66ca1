#include "widgets/fields/missing_list.h"

#include <QGridLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr int kColumns = 4;

}  // namespace

MissingList::MissingList(QWidget* parent) : Card(parent), grid_(new QGridLayout) {
    setAccessibleName(tr("Still to be entered"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 10, 14, 12);
    column->setSpacing(8);
    auto* heading = new ToneLabel(ToneLabel::Tone::plain,
                                  tr("Still to be entered, for all that this page can tell"), this);
    heading->setFont(textFont(TextSize::title, true));
    column->addWidget(heading);
    grid_->setSpacing(6);
    grid_->setColumnStretch(kColumns, 1);
    column->addLayout(grid_);
    hide();
}

void MissingList::showMissing(const Car& car, const std::vector<FieldId>& missing) {
    shown_ = missing;
    while (buttons_.size() < missing.size()) {
        const std::size_t index = buttons_.size();
        auto* button = new QPushButton(this);
        connect(button, &QPushButton::clicked, this, [this, index] { emit fieldRequested(shown_[index]); });
        grid_->addWidget(button, static_cast<int>(index) / kColumns, static_cast<int>(index) % kColumns);
        buttons_.push_back(button);
    }
    for (std::size_t index = 0; index < buttons_.size(); ++index) {
        buttons_[index]->setVisible(index < missing.size());
        if (index < missing.size()) {
            const QString name = wordsFor(car, missing[index]).name;
            buttons_[index]->setText(capitalized(name));
            buttons_[index]->setAccessibleName(tr("enter the %1").arg(name));
            buttons_[index]->setToolTip(tr("Goes to the field"));
        }
    }
    setVisible(!missing.empty());
}

}  // namespace bolthole
