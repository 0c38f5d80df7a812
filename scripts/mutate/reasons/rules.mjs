export default [];
