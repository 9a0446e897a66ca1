// What a played launch is steered with: play, how fast, and a track to go through it by hand.
#pragma once

#include <QAbstractButton>
#include <QAbstractSlider>
#include <QString>
#include <array>
#include <vector>

namespace bolthole {

class FilmPlayer;

/// Something that happens in a film.
struct FilmMark {
    double time = 0;  ///< s
    QString words{};
};

/// The button that plays and stops: a triangle or two bars.
class PlayButton : public QAbstractButton {
    Q_OBJECT
  public:
    explicit PlayButton(QWidget* parent = nullptr);

    void showPlaying(bool playing);
    [[nodiscard]] QSize sizeHint() const override { return {30, 30}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    bool playing_ = false;
};

/// The track of a film, in ms, with a tick for everything that happens. Drag, or arrows, Page Up and Down,
/// Home and End.
class FilmTrack : public QAbstractSlider {
    Q_OBJECT
  public:
    explicit FilmTrack(QWidget* parent = nullptr);

    void showFilm(double end, std::vector<FilmMark> marks);
    /// Moves the knob; says nothing.
    void showTime(double time);
    [[nodiscard]] const std::vector<FilmMark>& marks() const { return marks_; }
    /// Where a time stands along the track, px.
    [[nodiscard]] double placeOf(double time) const;
    [[nodiscard]] QSize sizeHint() const override { return {400, 30}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {120, 30}; }

  signals:
    void sought(double time);  ///< by hand, s

  protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

  private:
    void seekTo(double x);

    double time_ = 0;
    double end_ = 0;
    std::vector<FilmMark> marks_;
};

/// Button, speeds and track of one player.
class FilmBar : public QWidget {
    Q_OBJECT
  public:
    explicit FilmBar(FilmPlayer& player, QWidget* parent = nullptr);

    void showFilm(double end, std::vector<FilmMark> marks);
    [[nodiscard]] FilmTrack& track() const { return *track_; }
    [[nodiscard]] PlayButton& playButton() const { return *button_; }

  private:
    void addSpeeds();
    void showStill();

    FilmPlayer& player_;
    PlayButton* button_;
    FilmTrack* track_;
};

/// The speeds a film is played at, fastest first, and how they are called: "1", "1/4", "1/10".
struct FilmSpeed {
    double speed;
    const char* words;
};
inline constexpr std::array<FilmSpeed, 3> kFilmSpeeds{{{1, "1"}, {0.25, "1/4"}, {0.1, "1/10"}}};
/// "at full speed", "at 1/4 speed".
[[nodiscard]] QString speedWords(double speed);

}  // namespace bolthole
