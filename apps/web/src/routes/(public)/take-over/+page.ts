// Who may take the device over, only the device itself may ask: the server renders nothing of it.
export const ssr = false
