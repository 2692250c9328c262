/** The lesson: the teacher rates runs on the spot, leaves remarks, sets items aside or asks for them tomorrow. */
import { parseItemId } from '../../../shared/music/deck';
import { NoProgramme } from '../../parts/no-programme';
import type { ScreenProps } from '../../route';
import { useStore } from '../../store-context';
import { ItemLesson } from './item-lesson';
import { Overview } from './overview';

export function LessonScreen({ argument }: ScreenProps) {
  const { programme } = useStore().student.value;
  if (programme === null) return <NoProgramme title="Lesson" />;
  const item = argument === null ? null : parseItemId(argument);
  return item === null ? (
    <Overview programme={programme} />
  ) : (
    <ItemLesson key={item.id} item={item} programme={programme} />
  );
}
