#include "widgets/link_section.h"

#include <QVBoxLayout>

#include "widgets/field_words.h"
#include "widgets/unit_text.h"

namespace bolthole {

LinkSection::LinkSection(SheetHub& hub, int link, QWidget* parent)
    : Section(linkTitle(hub.state().car, link), parent), hub_(hub), link_(link) {
    header()->setToolTip(wrappedToolTip(kindWords(this->link().kind)));
    name_ = new NameField(this);
    name_->setAlignment(Qt::AlignRight);
    name_->setToolTip(wrappedToolTip(tr("The link's name in tables and papers.")));
    connect(name_, &NameField::renamed, this, [this](const std::string& typed) {
        hub_.request(RenameLink{link_, typed});
    });
    body()->addWidget(new BoxRow(tr("Name"), name_, this));
    chassis_ = new BracketGrid(hub, link, End::chassis, this);
    axle_ = new BracketGrid(hub, link, End::axle, this);
    body()->addWidget(chassis_);
    body()->addWidget(axle_);
    if (this->link().kind == LinkKind::rod) {
        length_ = new LengthPart(hub, link, this);
        body()->addWidget(length_);
    }
    refresh();
}

const Link& LinkSection::link() const {
    return hub_.state().car.links[static_cast<std::size_t>(link_)];
}

QString LinkSection::summary() const {
    QString holes = tr("%1 / %2").arg(holeName(link().chassis, link().chassis.use),
                                      holeName(link().axle, link().axle.use));
    if (link().kind != LinkKind::rod) {
        return holes;
    }
    const NumberStyle style = hub_.state().style;
    const std::string length = link().length
                                   ? fieldText(*link().length, Quantity::length, style)
                                   : fineFigureText(holeDistance(link()), Quantity::length, style.units);
    return tr("%1, %2 %3 long%4")
        .arg(holes, QString::fromStdString(length), unitText(Quantity::length, style.units),
             link().length ? QString() : tr(" (fitted)"));
}

bool LinkSection::refresh() {
    header()->showTexts(linkTitle(hub_.state().car, link_), isUnfolded() ? QString() : summary());
    name_->showName(link().name);
    const QString spoken = tr("%1, name of the link").arg(linkName(hub_.state().car, link_));
    if (name_->accessibleName() != spoken) {
        name_->setAccessibleName(spoken);
    }
    bool renamed = chassis_->refresh();
    renamed = axle_->refresh() || renamed;
    if (length_ != nullptr) {
        length_->refresh();
    }
    return renamed;
}

}  // namespace bolthole
