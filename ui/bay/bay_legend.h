// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

#include <vector>

namespace stillbay::ui {

/// What the bay view's colours, lines and marks mean, in as many rows as its width asks for.
class BayLegend final : public QWidget {
    Q_OBJECT
public:
    enum class Sign {
        Solid,
        Ghost,
        Tube,
        CentreOfMass,
        ElasticCentre,
        ElasticAxes,
        Sight,
        Lit,
    };
    struct Entry {
        Sign sign;
        QString text;
        bool shows = true;  ///< else only its place is kept
        bool operator==(const Entry&) const = default;
    };

    explicit BayLegend(QWidget* parent = nullptr);

    void setEntries(const std::vector<Entry>& entries);
    QString text() const;  ///< all of it, as read aloud

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int rowHeight() const;
    int widthOf(const Entry& entry) const;
    std::vector<QPoint> places(int width) const;  // of the entries' left upper corners
    void drawSign(QPainter& painter, Sign sign, const QRectF& box) const;

    std::vector<Entry> m_entries;
};

}  // namespace stillbay::ui
