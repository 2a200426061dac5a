// What was just written, told once at the next place.
export const just_said = $state<{ text: string }>({ text: '' });
