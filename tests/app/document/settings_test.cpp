// What the program remembers between starts: damaged or from another version it gives the defaults, and the
// window starts all the same.
#include "app/document/settings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QSettings>
#include <random>

#include "app/window/main_window.h"

namespace bolthole {
namespace {

class SettingsFile : public testing::Test {
  protected:
    void SetUp() override {
        file_ = QSettings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("bolthole"),
                          QStringLiteral("bolthole"))
                    .fileName();
        ASSERT_TRUE(file_.startsWith(QDir::tempPath()))
            << "these tests must not touch the person's own settings";
        ASSERT_TRUE(QDir().mkpath(QFileInfo(file_).path()));
    }
    void TearDown() override { QFile::remove(file_); }
    void write(const QByteArray& bytes) const {
        QFile file(file_);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        file.write(bytes);
    }
    // Starts the window with what is read; gives that.
    static Settings start() {
        Settings settings = Settings::load();
        MainWindow window(settings);
        window.openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
        window.show();
        EXPECT_TRUE(window.isVisible());
        EXPECT_GE(window.width(), 200);
        EXPECT_LE(window.width(), 10'000);
        EXPECT_TRUE(window.state().traceIsCurrent);
        return settings;
    }
    QString file_;
};

TEST_F(SettingsFile, WhatWasSavedComesBack) {
    Settings settings;
    settings.inches = InchStyle::decimal;
    settings.appearance = Appearance::dark;
    EXPECT_FALSE(Settings::load().keepsStill.has_value()) << "as the desktop wishes until it is chosen";
    settings.keepsStill = false;
    settings.remember(QStringLiteral("/shop/one.bolt.json"));
    settings.save();
    const Settings back = Settings::load();
    EXPECT_EQ(back.inches, InchStyle::decimal);
    EXPECT_EQ(back.appearance, Appearance::dark);
    EXPECT_EQ(back.keepsStill, false);
    EXPECT_EQ(back.recentFiles, QStringList{QStringLiteral("/shop/one.bolt.json")});
}

TEST_F(SettingsFile, UnknownWordsGiveTheDefaults) {
    write(
        "[General]\ninches=furlongs\nappearance=@Invalid()\nrecentFiles=7\nwindowGeometry="
        "rubbish\nbenchSplit=@ByteArray("
        "\\xff\\xff\\xff)\npanelSplit=\nfromTheFuture=yes\n");
    const Settings read = start();
    EXPECT_EQ(read.inches, InchStyle::sixteenths);
    EXPECT_EQ(read.appearance, Appearance::followDesktop);
}

TEST_F(SettingsFile, RubbishGivesAStart) {
    std::mt19937 random(3);
    for (int run = 0; run < 12; ++run) {
        QByteArray bytes(static_cast<qsizetype>(random() % 3000), '\0');
        std::ranges::generate(bytes, [&] { return static_cast<char>(random()); });
        if (run % 2 == 0) {
            bytes.prepend("[General]\nwindowGeometry=@ByteArray(");
        }
        write(bytes);
        const Settings read = start();
        EXPECT_LE(read.recentFiles.size(), 8);
    }
}

// The toolkit's own geometry and splitter bytes with single bytes changed.
TEST_F(SettingsFile, DamagedGeometryGivesAWindowThatCanBeSeen) {
    MainWindow window{Settings{}};
    window.show();
    const QByteArray whole = window.saveGeometry();
    std::mt19937 random(4);
    for (int run = 0; run < 12; ++run) {
        Settings settings;
        settings.windowGeometry = whole;
        settings.windowGeometry[static_cast<qsizetype>(random() % static_cast<std::size_t>(whole.size()))] =
            static_cast<char>(random());
        settings.benchSplit = QByteArray(40, static_cast<char>(random()));
        settings.panelSplit = whole;
        settings.save();
        start();
    }
}

TEST_F(SettingsFile, AFileThatIsAFolderGivesTheDefaultsAndASilentSave) {
    QFile::remove(file_);
    ASSERT_TRUE(QDir().mkpath(file_));
    const Settings read = start();
    EXPECT_EQ(read.inches, InchStyle::sixteenths);
    read.save();
    ASSERT_TRUE(QDir(file_).removeRecursively());
}

}  // namespace
}  // namespace bolthole
