#include "widgets/kit/picture_copy.h"

#include <QAction>
#include <QClipboard>
#include <QFileDialog>
#include <QGuiApplication>
#include <QImage>
#include <QMessageBox>
#include <QMimeData>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>
#include <QWidget>

#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

QImage imageOf(QWidget& picture) {
    QImage image(kTakenPixels * picture.size(), QImage::Format_RGB32);
    image.setDevicePixelRatio(kTakenPixels);
    image.fill(picture.palette().color(QPalette::Window));
    picture.render(&image);
    return image;
}

bool writeDrawing(QWidget& picture, QIODevice& file) {
    QSvgGenerator drawing;
    drawing.setOutputDevice(&file);
    drawing.setSize(picture.size());
    drawing.setViewBox(picture.rect());
    drawing.setResolution(96);
    drawing.setTitle(picture.accessibleName());
    drawing.setDescription(picture.accessibleDescription());
    QPainter painter;
    if (!painter.begin(&drawing)) {
        return false;
    }
    picture.render(&painter);
    return painter.end();
}

void askSavePicture(QWidget& picture) {
    const QString name = picture.accessibleName().isEmpty() ? tr("picture") : picture.accessibleName();
    const QString fileName =
        QFileDialog::getSaveFileName(&picture, tr("Save picture"), name + QStringLiteral(".png"),
                                     tr("Picture of pixels (*.png);;Drawing of lines (*.svg)"));
    if (!fileName.isEmpty() && !savePicture(picture, fileName)) {
        QMessageBox::warning(&picture, tr("Save picture"), tr("%1 could not be written.").arg(fileName));
    }
}

}  // namespace

std::unique_ptr<QMimeData> copyOf(QWidget& picture) {
    auto taken = std::make_unique<QMimeData>();
    if (!picture.size().isEmpty()) {
        taken->setImageData(imageOf(picture));
    }
    QStringList words{picture.accessibleName(), picture.accessibleDescription()};
    words.removeAll(QString());
    taken->setText(words.join('\n'));
    return taken;
}

bool savePicture(QWidget& picture, const QString& fileName) {
    QSaveFile file(fileName);
    if (!file.open(QIODevice::WriteOnly)) {
        return false;
    }
    const bool isDrawing = fileName.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    return (isDrawing ? writeDrawing(picture, file) : imageOf(picture).save(&file, "PNG")) && file.commit();
}

void offerPicture(QWidget& picture, bool hasMenu) {
    auto* copy = new QAction(tr("&Copy picture"), &picture);
    copy->setShortcut(QKeySequence::Copy);
    copy->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    QObject::connect(copy, &QAction::triggered, &picture,
                     [&picture] { QGuiApplication::clipboard()->setMimeData(copyOf(picture).release()); });
    auto* save = new QAction(tr("&Save picture…"), &picture);
    QObject::connect(save, &QAction::triggered, &picture, [&picture] { askSavePicture(picture); });
    picture.addActions({copy, save});
    if (hasMenu) {
        picture.setContextMenuPolicy(Qt::ActionsContextMenu);
    }
}

}  // namespace bolthole
