#include "app/commands/template_command.h"

#include <charconv>

#include "app/commands/chart_command.h"
#include "app/papers/pdf_file.h"
#include "app/papers/quiet_toolkit.h"
#include "geometry/car/fields.h"
#include "widgets/papers/drilling_template.h"
#include "widgets/papers/template_cut.h"

namespace bolthole {

namespace {

/// A link, or why there is none.
struct FoundLink {
    int link = -1;
    std::string complaint;
};

std::string namesOf(const Car& car) {
    std::string names;
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        names += (link == 0 ? "" : " or ") + ("'" + linkWords(car, link) + "'");
    }
    return names;
}

FoundLink linkByNumber(const Car& car, std::string_view digits) {
    int number = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    const bool whole = error == std::errc() && end == digits.data() + digits.size();
    if (!whole || number < 1 || number > static_cast<int>(car.links.size())) {
        return {-1, "--link: no link #" + std::string(digits) + ", expected #1 to #" +
                        std::to_string(car.links.size())};
    }
    return {number - 1, {}};
}

FoundLink linkByName(const Car& car, const std::string& name) {
    FoundLink found;
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        if (linkWords(car, link) != name) {
            continue;
        }
        if (found.link >= 0) {
            return {-1, "--link: several links are called '" + name + "', expected #" +
                            std::to_string(found.link + 1) + " or #" + std::to_string(link + 1)};
        }
        found.link = link;
    }
    if (found.link < 0) {
        found.complaint = "--link: no link is called '" + name + "', expected " + namesOf(car);
    }
    return found;
}

// By its name first: a name may begin with '#'.
FoundLink linkOf(const Request& request, const Car& car) {
    const std::optional<std::string> name = request.value(kLinkNameOption);
    if (!name) {
        return {-1, "--link: no link given, expected --link NAME"};
    }
    FoundLink found = linkByName(car, *name);
    return found.link < 0 && name->starts_with('#') ? linkByNumber(car, name->substr(1)) : found;
}

// The face asked for, as the file's ending wants it; empty: it is neither of the two.
QByteArray cutFile(const Request& request, const TemplateRequest& wanted) {
    const QString file = QString::fromStdString(request.value(kOutputOption).value_or(""));
    const bool isSvg = file.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    if (!isSvg && !file.endsWith(QLatin1String(".dxf"), Qt::CaseInsensitive)) {
        return {};
    }
    const bool isRight = request.value(kFaceOption) == "right";
    const TemplateScene scene = templateScene(wanted, isRight ? TemplateFace::right : TemplateFace::left);
    return isSvg ? templateSvg(scene, QString::fromStdString(wanted.car.title))
                 : templateDxf(scene, wanted.style.units);
}

}  // namespace

TemplateOutcome makeTemplate(const Request& request, const Car& car) {
    if (!request.value(kOutputOption)) {
        return {{}, "-o: no file given for the template, expected -o FILE"};
    }
    FoundLink found = linkOf(request, car);
    if (found.link < 0) {
        return {{}, std::move(found.complaint)};
    }
    const std::optional<std::string> end = request.value(kEndOption);
    if (!end) {
        return {{}, "--end: no end of the link given, expected --end chassis or --end axle"};
    }
    const QuietToolkit toolkit;
    const TemplateRequest wanted{
        car, {found.link, *end == "axle" ? End::axle : End::chassis}, NumberStyle{car.units}};
    if (const QByteArray cut = cutFile(request, wanted); !cut.isEmpty()) {
        return {cut.toStdString(), {}};
    }
    const QPageLayout page = templatePageOf(paperAsked(request, car.units), wanted);
    if (const QString refusal = templateRefusal(wanted, page); !refusal.isEmpty()) {
        return {{}, bracketPath(found.link, wanted.place.end) + ": " + refusal.toStdString()};
    }
    const QByteArray pdf = pdfOf(DrillingTemplate(wanted, page), page, car.title);
    return pdf.isEmpty() ? TemplateOutcome{{}, std::string("the template ").append(kNotPainted)}
                         : TemplateOutcome{pdf.toStdString(), {}};
}

}  // namespace bolthole
