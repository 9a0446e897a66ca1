#include "widgets/scene/scene.h"

namespace bolthole {

void Scene::clear() {
    items.clear();
    points.clear();
    words.clear();
    labels.clear();
}

void Scene::add(SceneShape shape, int id, SceneMarks marks) {
    items.push_back({std::move(shape), id, marks});
}

ScenePath& Scene::addPath(std::span<const QPointF> through, bool isClosed) {
    ScenePath path;
    path.first = points.size();
    path.count = through.size();
    path.isClosed = isClosed;
    points.insert(points.end(), through.begin(), through.end());
    items.push_back({path, -1, {}});
    return std::get<ScenePath>(items.back().shape);
}

}  // namespace bolthole
