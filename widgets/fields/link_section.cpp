#include "widgets/fields/link_section.h"

#include <QVBoxLayout>

#include "geometry/car/fields.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

LinkSection::LinkSection(SheetHub& hub, int link, QWidget* parent)
    : Section(linkTitle(hub.state().car, link), parent), hub_(hub), link_(link) {
    header()->setToolTip(wrappedToolTip(kindWords(this->link().kind)));
    warnings_ = new ToneLabel(ToneLabel::Tone::problem, QString(), this);
    warnings_->setWordWrap(true);
    warnings_->setContentsMargins(4, 0, 4, 0);
    body()->addWidget(warnings_);
    name_ = new NameField(this);
    name_->setAlignment(Qt::AlignRight);
    name_->setToolTip(wrappedToolTip(tr("The link's name in tables and papers.")));
    connect(name_, &NameField::renamed, this, [this](const std::string& typed) {
        hub_.request(RenameLink{link_, typed});
    });
    body()->addWidget(new BoxRow(tr("Name"), name_, this));
    tools_ = new LinkTools(hub, link, this);
    body()->addWidget(tools_);
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
    const std::string length = fieldText(builtLength(link()), Quantity::length, style);
    return tr("%1, %2 %3 long%4")
        .arg(holes, QString::fromStdString(length), unitText(Quantity::length, style.units),
             link().length ? QString() : tr(" (fitted)"));
}

// What is wrong or doubtful with this link; of the whole link, or also of its numbers, which say it
// themselves.
QString LinkSection::warningWords(bool ofWholeLink) const {
    QStringList words;
    const BenchState& state = hub_.state();
    const std::string place = linkPath(link_);
    for (const Fault& fault : state.faults) {
        if (fault.id.link == link_ && (!ofWholeLink || fault.path == place)) {
            words << QString::fromStdString(fault.reason);
        }
    }
    for (const Warning& warning : state.warnings) {
        const bool whole = warning.path == place || warning.path == "links";
        if ((warning.id.link == link_ || warning.path == place) && (!ofWholeLink || whole)) {
            words << QString::fromStdString(sentence(warning.finding));
        }
    }
    return words.join(QStringLiteral("; "));
}

void LinkSection::refreshWarnings() {
    header()->showWarning(warningWords(false));
    const QString warnings = warningWords(true);
    warnings_->showText(warnings.isEmpty() ? QString() : QStringLiteral("▲ ") + capitalized(warnings) + u'.');
    warnings_->setVisible(!warnings.isEmpty());
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
    tools_->refresh();
    refreshWarnings();
    return renamed;
}

}  // namespace bolthole
